// Package draw is the drawing board: a CPU canvas with the line kinds, hatches,
// lettering and palette of the sheet. Coordinates are those of a 1280×720 sheet,
// 3 units to the millimetre, scaled all together.
package draw
