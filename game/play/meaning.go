package play

import _ "embed" // hashes.txt

// meaning is the hashes of the bits that physics, checks, evidence and marks come to
// in a reference run, which tests/golden holds the program to and writes anew. It
// changes with every change of what recorded acts replay to.
//
//go:embed hashes.txt
var meaning string
