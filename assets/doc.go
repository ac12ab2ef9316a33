// Package assets holds what a learner reads and what it is lettered with: fonts
// and wording, one YAML file a language.
package assets
