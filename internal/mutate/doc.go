// Mutate changes one constant or operator of a package at a time, runs the
// tests that rest on it, and prints the changes that no test noticed.
//
//	go run ./internal/mutate -sample 60 -seed 1 -run "" ./internal/matter/solution
//	go run ./internal/mutate -run ./cmd/ripplecalc ./internal/answer/model
//
// The tree is never touched: what is changed lives in temporary files that the
// go command takes in place of the package's (go help build, -overlay). All
// changes of a package are compiled at once, each asleep until its number is
// called, so that trying one costs a run of tests and no compiling; what is
// fixed when compiled, in a declaration of constants, is compiled on its own.
//
// Each test is first run alone, to see how long it takes and which changes it
// meets. A change is then put to the tests that meet it: the package's own, the
// quick ones first, then those of the packages named by -run. The first failure
// ends it. A test that hangs has noticed; a change that no test meets survives.
package main
