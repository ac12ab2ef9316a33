// Package window shows an app in a window or a browser page. It is the only
// package that imports ebiten: it turns hands into events, elapsed time into
// whole milliseconds, and uploads what the app has drawn anew.
package window
