// Package customary holds what a US customary measure is in metric ones. Source: NIST
// Handbook 44 (2024), Appendix C; all are exact. What a rule prints with fewer digits
// stands with the rule.
package customary

// Volumes, mL.
const (
	GallonML     = 3785.411784
	QuartML      = GallonML / 4
	PintML       = GallonML / 8
	CupML        = GallonML / 16
	FluidOunceML = GallonML / 128
	TablespoonML = FluidOunceML / 2
	TeaspoonML   = FluidOunceML / 6
)

// Masses, g, avoirdupois.
const (
	PoundG = 453.59237
	OunceG = PoundG / 16
)

// Lengths, mm and m.
const (
	InchMM = 25.4
	FootM  = 12 * InchMM / 1000
)
