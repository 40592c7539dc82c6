// Package balance runs the maker's question backwards: of a design and of what
// is wished for, it finds what to weigh. Remedies mend a design whose verdict
// is not good; Balance answers wishes of a maker's own.
//
// It knows no physics: it asks package model, in the search for a sketch of a
// design and once more, of what it proposes, for all of it, and package cold how
// a tub warms on the counter where minutes are wished for. Everything it
// proposes is a whole design that has been evaluated.
//
// Temperatures are °C, masses g, hardness kPa.
package balance
