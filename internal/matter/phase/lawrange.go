package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

// mostFat is the fat, of all mass, up to which the hardness law may be read: it
// has no term for fat, and the ice creams that it is anchored on have 10 to
// 20 % (McGee 2004, On Food and Cooking: good recipes; beyond, a churn makes
// butter).
const mostFat = 0.20

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

// Hardness returns the yield stress of s, a state of b, in kPa, NaN where the hardness
// law ends.
func (b *Body) Hardness(s *State) float64 {
	if b.LawRange(s).Ends() {
		return math.NaN()
	}
	return s.YieldKPa
}

// LawRange returns where s, a state of b, is outside the hardness law.
func (b *Body) LawRange(s *State) LawRange {
	return LawRange{
		SyrupTooThick: s.SyrupSugar > solution.ViscosityRange.MaxPercent,
		TooCold:       s.T < solution.ViscosityRange.MinC,
		FatTooHigh:    b.Mix.Mass[mix.Fat] > mostFat*b.Mix.Total(),
	}
}
