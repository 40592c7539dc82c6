// Mutate changes one constant or operator of a package at a time, runs the
// tests that rest on it, and prints the changes that no test noticed.
//
//	go run ./internal/mutate -sample 60 -seed 1 ./internal/matter/solution
//
// The tree is never touched: a change lives in a temporary file that the go
// command takes in its place (go help build, -overlay). The package's own tests
// run first, then those named by -run that import it; the first failure ends
// it. A change that does not compile is no change and is not counted.
package main
