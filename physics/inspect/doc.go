// Package inspect holds the checks an inspector can make on a car: each is a
// small experiment on a copy of the world, seen through a meter.
//
// A check computes what an ideal instrument would show (Measure, no luck in it);
// its Meter turns that into a display and gives the exact probability of every
// display. Luck is an argument: the caller draws.
package inspect
