package ripple

import "math"

// Word says how a ribbon of some thickness eats.
type Word uint8

// The words, from thin to thick.
const (
	NoWord  Word = iota // thickness unknown
	Blended             // one colour, one taste
	Blush               // seen, hardly felt
	Ribbon              // seen and felt
	Lump                // eats as a piece of its own
)

// String returns "blended", "blush", "ribbon", "lump" or "".
func (w Word) String() string { return [...]string{"", "blended", "blush", "ribbon", "lump"}[w] }

// WordRange is the thickness a word stands for: from FromMM up to ToMM.
type WordRange struct {
	Word         Word
	FromMM, ToMM float64
}

// WordsBasis is how well the ranges of Words are known.
const WordsBasis = "common practice, no source"

// Words returns the ranges, in mm, from thin to thick. The last has no end.
func Words() []WordRange {
	return []WordRange{
		{Blended, 0, 1}, {Blush, 1, 3}, {Ribbon, 3, 10}, {Lump, 10, math.Inf(1)},
	}
}

// WordFor returns the word for a thickness in mm, NoWord for NaN.
func WordFor(mm float64) Word {
	for _, w := range Words() {
		if mm >= w.FromMM && mm < w.ToMM {
			return w.Word
		}
	}
	return NoWord
}

// Hardness is how hard the phases are when the dessert is eaten.
type Hardness struct {
	FoamKPa, DenseKPa float64 // hardness, kPa; NaN if unknown
	FirmKPa, HardKPa  float64 // where the caller's scale calls a phase firm, and hard to spoon; FirmKPa < HardKPa
}

// Limits of Advise for the thickest tenth of a phase's chords, mm:
// common practice, no source.
const (
	firmLimitMM = 6.0
	hardLimitMM = 3.0
)

// Firmness is where a phase stands on a scale of hardness.
type Firmness uint8

// The steps of firmness.
const (
	FirmnessUnknown Firmness = iota
	Soft
	Firm
	Hard
)

// String returns "unknown", "soft", "firm" or "hard".
func (f Firmness) String() string { return [...]string{"unknown", "soft", "firm", "hard"}[f] }

// Advice is what hardness says about one phase's ribbons.
type Advice struct {
	Phase      string // "foam" or "dense"
	Firmness   Firmness
	LimitMM    float64 // ribbons thicker than this are hard to bite; NaN: no limit
	ThickestMM float64 // the mean of the thickest tenth of the chords
	Exceeded   bool    // ThickestMM is above LimitMM
}

// Advise returns one Advice for each phase that is present, the dense one first.
func (m Measure) Advise(s Hardness) []Advice {
	var all []Advice
	if m.FoamFraction == 0 || m.FoamFraction == 1 {
		return nil // one phase has no ribbons
	}
	for _, p := range []struct {
		name    string
		kPa     float64
		ribbons Ribbons
	}{{"dense", s.DenseKPa, m.Dense}, {"foam", s.FoamKPa, m.Foam}} {
		if math.IsNaN(p.ribbons.P50MM) {
			continue
		}
		a := Advice{Phase: p.name, LimitMM: math.NaN(), ThickestMM: p.ribbons.ThickestTenthMM}
		switch {
		case math.IsNaN(p.kPa):
		case p.kPa >= s.HardKPa:
			a.Firmness, a.LimitMM = Hard, hardLimitMM
		case p.kPa >= s.FirmKPa:
			a.Firmness, a.LimitMM = Firm, firmLimitMM
		default:
			a.Firmness = Soft
		}
		a.Exceeded = a.ThickestMM > a.LimitMM
		all = append(all, a)
	}
	return all
}
