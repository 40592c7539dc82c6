// Package cold answers a maker's questions of time for a design: when to stir
// it while it freezes, how long it hardens, how long to leave it out, and what
// storage does to it.
//
// Temperatures are °C, times minutes or hours as named, lengths mm in answers
// and m inside. The conduction is package heat's; here a design becomes
// materials, a kitchen becomes air and coefficients, and crossings become
// advice.
//
// # What is computed
//
// The rippled tub is one material: ribbons a few mm thick even out within
// seconds (L²/π²α). Enthalpies add by volume at a common temperature, the
// conductivity is Bruggeman's. A parcel keeps its mass, so densities are those
// of filling. A box is taken as the upright cylinder of its volume and height.
//
// The outside coefficient is constant along a run. Where a kitchen gives none
// it is that of an upright wall in still air (heat.StillAir) with its surface
// at the mean of the start and the temperature asked for, and it serves every
// face. Package wall, lid and head space lie in series with it.
//
// Times carry a band, computed, not assumed: the same run with the coefficient
// 30 % up and down (10 % once a time has been measured in that kitchen). What
// the unknowns of a recipe do is not in it, nor is the spread of the foam's
// conductivity, which moves the hardening of a pure foam by up to 25 %.
//
// # What is not
//
// Doors that open, tubs that touch each other, air that the product itself
// warms, melting that runs off the wall. Nothing here judges whether food may
// be eaten: local code and licensed practice do.
package cold
