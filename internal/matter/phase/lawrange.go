package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

// MostFat is the fat, of all mass, up to which the hardness law may be read: it
// has no term for fat, and the ice creams that it is anchored on have 10 to
// 20 % (McGee 2004, On Food and Cooking: good recipes; beyond, a churn makes
// butter).
const MostFat = 0.20

// LawRange says where the hardness of a state leaves what its law knows.
type LawRange struct {
	SyrupTooThick bool // above solution.ViscosityRange.MaxPercent: unlike recipes read alike
	TooCold       bool // below solution.ViscosityRange.MinC
	FatTooHigh    bool // the fat itself is what a spoon meets: no word fits
}

// Ends reports whether the law ends anywhere: the hardness is then no figure
// and has no word.
func (l LawRange) Ends() bool { return l != LawRange{} }

// NoWord stands where the hardness law ends.
var NoWord = Word{Name: "not known"}

// Word returns the step of the word scale for s, a state of b, NoWord where the
// hardness law ends.
func (b *Body) Word(s *State) Word {
	if b.LawRange(s).Ends() {
		return NoWord
	}
	return WordFor(s.YieldKPa)
}

// HardnessKPa returns the yield stress of s, a state of b, in kPa, NaN where the hardness
// law ends.
func (b *Body) HardnessKPa(s *State) float64 {
	if b.LawRange(s).Ends() {
		return math.NaN()
	}
	return s.YieldKPa
}

// LawRange returns where s, a state of b, is outside the hardness law.
func (b *Body) LawRange(s *State) LawRange {
	return LawRange{
		SyrupTooThick: s.SyrupSugarPercent > solution.ViscosityRange.MaxPercent,
		TooCold:       s.AtC < solution.ViscosityRange.MinC,
		FatTooHigh:    b.Mix.Grams[mix.Fat] > MostFat*b.Mix.TotalG(),
	}
}

// LawFromC returns the coldest temperature from lo up, °C to 0.01, from which on to
// hi the hardness law may be read; ok is false where it may not even at hi. As a
// phase cools its syrup only thickens, so it leaves the law once.
func (b *Body) LawFromC(lowC, highC float64) (from float64, ok bool) {
	ends := func(t float64) bool {
		s := b.At(t)
		return b.LawRange(&s).Ends()
	}
	switch {
	case ends(highC):
		return highC, false
	case !ends(lowC):
		return lowC, true
	}
	for highC-lowC > 0.01 {
		if mid := (lowC + highC) / 2; ends(mid) {
			lowC = mid
		} else {
			highC = mid
		}
	}
	return highC, true
}
