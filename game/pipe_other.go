//go:build !unix

package main

// bearPipe has nothing to do where no signal tells of a reader that went away.
func bearPipe() {}
