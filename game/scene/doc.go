// Package scene draws the screens: one file or one family of files a screen.
// Events change a scene, time advances it, drawing only looks.
package scene
