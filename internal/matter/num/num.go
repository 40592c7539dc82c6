// Package num holds the two numerical methods that more than one physical model
// needs: a bracketed root and a cubic between two points.
//
// Everything works on plain float64 in whatever units the caller uses, keeps no
// state between calls, and reports a bad argument as an error rather than as a
// number that looks like an answer.
package num
