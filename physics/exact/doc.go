// Package exact holds the few transcendental functions the simulator needs,
// computed so that every machine gives the same bits.
//
// math.Exp, math.Pow and their kin differ in the last bits between processors,
// because some have assembly and some fuse a product with a sum. Everything here
// is made of + − × ÷ √ and exact operations on the exponent, with each product
// that is added to something wrapped in float64(), which forbids fusing.
//
// Relative errors are below 1e-14 against package math over the ranges named
// with each function.
package exact
