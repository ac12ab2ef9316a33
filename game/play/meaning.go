package play

import _ "embed" // meaning.txt

// meaning is a digest of the bits that physics, checks, evidence and marks come to
// in a reference run. It changes with every change of what recorded acts replay to:
// tests/golden holds it to the run and writes it anew.
//
//go:embed meaning.txt
var meaning string
