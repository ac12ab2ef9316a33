// Package evidence says what readings prove. It holds a table of what every
// hypothesis would show at every check, with its dependence on what an
// inspector cannot know, and turns readings into a posterior.
package evidence
