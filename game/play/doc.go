// Package play is a session without a face: acts in, view out. It is the one
// place where a cause of the catalogue becomes a hypothesis of evidence.
package play
