// Package term plays a session in a terminal, by words and numbers. It prints
// the view's nodes as plain lines, so that a screen reader reads them in order
// and a pipe can drive it; there is no cursor art.
//
// After every act only what has changed is printed. A choice is made by the
// letter or number before it; what a field asks for is typed as it is.
package term
