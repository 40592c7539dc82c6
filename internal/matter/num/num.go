// Package num holds what more than one physical model needs: a bracketed root, a
// cubic between two points, and a loop on all processors.
//
// Everything works on plain float64 in whatever units the caller uses, keeps no
// state between calls, and reports a bad argument as an error rather than as a
// number that looks like an answer.
package num
