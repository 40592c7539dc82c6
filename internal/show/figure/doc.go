// Package figure is the one table of every figure that anybody reads: what it
// is called, what its key is, how it is counted, how finely it is worth
// printing, where it comes from, and its value with its band and its bound.
//
// The card, the page of all figures, the text and the JSON of ripplecalc and
// the help on that JSON choose rows and lay them out; none of them takes a
// figure from a result by itself. A new figure is a row here.
//
// Values are in the row's unit: g, mL, °C, K, kPa, percent and not fractions.
// Digits and units are package say's.
package figure
