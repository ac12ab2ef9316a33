// Package widget is what can be pressed, typed into or threaded on the sheet. A
// widget is a plain value that draws itself on a canvas and answers events; it
// knows no window, no session and no word of its own.
//
// Nothing reacts without a chamfered top right corner, and everything with one
// does. Chosen is filled with reversed lettering, in focus has a second outline
// 4 units outside, unavailable is dashed.
package widget
