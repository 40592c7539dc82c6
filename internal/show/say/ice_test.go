package say_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/show/say"
)

// grown is a custard of so many µm when hardened and in the end.
func grown(hardened, last float64) icy.Answer {
	size := func(um float64) ice.Size { return ice.Size{ValueUM: um, LowUM: um / 1.3, HighUM: um * 1.4} }
	word := func(um float64) icy.Word {
		return icy.Word{Step: ice.WordFor(um), Low: ice.WordFor(um / 1.3), High: ice.WordFor(um * 1.4)}
	}
	a := icy.Answer{BeginsC: -2.6, AtC: -18, SwingK: 2, Openings: 4, Weeks: 12}
	a.Custard = icy.Phase{Present: true, Frozen: true, AfterFreezing: size(hardened / 1.2), Hardened: word(hardened), Word: word(last)}
	for w := 0; w <= 12; w++ {
		um := hardened + float64(w)/12*(last-hardened)
		a.Custard.Weeks = append(a.Custard.Weeks, icy.Week{Week: float64(w), Wall: size(um - 2), Core: size(um)})
	}
	upTo := ice.Words[a.Custard.Hardened.Step].BelowUM
	weeks := math.Inf(1)
	if last > hardened && !math.IsInf(upTo, 1) {
		weeks = 12 * (upTo - hardened) / (last - hardened)
	}
	a.Keeps = icy.Keeps{Word: a.Custard.Hardened, UpToUM: upTo, Weeks: weeks, LowWeeks: weeks / 3, HighWeeks: weeks * 3}
	return a
}

func TestTheIceLineSaysTheWordAndWhenItChanges(t *testing.T) {
	for _, c := range []struct {
		hardened, last float64
		want           string
	}{
		{44, 56, "smooth when hardened, slightly coarse after 6 weeks"},
		{44, 48, "smooth when hardened and after 12 weeks"},
		{25, 28, "fine when hardened and after 12 weeks"},
		{49.9, 70, "smooth when hardened, slightly coarse within a week"},
		{60, 80, "slightly coarse when hardened, icy after 9 weeks"},
		{80, 95, "icy when hardened and after 12 weeks"},
	} {
		a := grown(c.hardened, c.last)
		assert.Equal(t, c.want, say.IceLine(say.Usual, &a))
	}
	a := grown(44, 56)
	a.Custard.Melts = true
	assert.Contains(t, say.IceLine(say.Usual, &a), "melts its edge")
	a.Custard.Frozen = false
	assert.Contains(t, say.IceLine(say.Usual, &a), "no ice at ")
	assert.Empty(t, say.IceLine(say.Usual, &icy.Answer{}))
}

func TestTheBandOfAWordIsTold(t *testing.T) {
	for want, w := range map[string]icy.Word{
		"smooth": {Step: 1, Low: 1, High: 1}, "smooth, may be fine": {Step: 1, Low: 0, High: 1},
		"smooth, may be icy": {Step: 1, Low: 1, High: 3}, "slightly coarse, may be fine or icy": {Step: 2, Low: 0, High: 3},
	} {
		assert.Equal(t, want, say.Icy(w))
	}
}

// How long it keeps its word is a range with its factor, and never a promise.
func TestWeeksOfSmoothnessAreARangeAndNoTimeOfKeeping(t *testing.T) {
	a := grown(44, 56)
	text := say.IceKeeps(say.Usual, &a)
	for _, want := range []string{"about 6 weeks", "2 to 18 weeks", "factor of 3", "swings 2 °C", "nothing of how long it keeps"} {
		assert.Contains(t, text, want)
	}
	for _, c := range [][2]float64{{49.99, 60}, {40, 40.01}, {30, 31}, {45, 46}} {
		a := grown(c[0], c[1])
		text := say.IceKeeps(say.Usual, &a)
		assert.Contains(t, text, "nothing of how long it keeps")
		assert.NotContains(t, text, "Inf")
		assert.NotContains(t, text, " 0 weeks")
	}
	icyAlready := grown(80, 90)
	assert.Empty(t, say.IceKeeps(say.Usual, &icyAlready), "nothing is left to keep")
}

func TestStepsAreToldFromTheLargestAndSmallOnesNot(t *testing.T) {
	a := grown(44, 56)
	a.Steps = []icy.Share{{Step: icy.Seed, Fraction: 0.01}, {Step: icy.Mush, Fraction: 0.24}, {Step: icy.Hardening, Fraction: 0.25}, {Step: icy.Storage, Fraction: 0.5}}
	text := say.IceSteps(say.Usual, &a)
	assert.Less(t, strings.Index(text, "storage"), strings.Index(text, "hardening"))
	assert.Less(t, strings.Index(text, "hardening"), strings.Index(text, "last beat"))
	assert.NotContains(t, text, "first crystals")
	for _, s := range []icy.Step{icy.Seed, icy.Mush, icy.Unparted, icy.Hardening, icy.Storage, icy.Swing, icy.Openings} {
		assert.NotEmpty(t, say.IceStep(s), "%s", s)
	}
}

func TestEachRemedySaysWhatToDoAndHowMuchItHelps(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range []icy.Change{icy.ShallowerDish, icy.ColderTray, icy.BeatToTheEnd, icy.BeatAtAll, icy.SmallerTubs, icy.ColderFreezer, icy.SteadyFreezer, icy.OpenLess, icy.LessFreeWater} {
		r := icy.Remedy{Change: c, From: 31, To: 17, After: ice.Size{ValueUM: 47}, FinerUM: 9, Word: icy.Word{Step: 1}}
		text := say.IceRemedy(say.Usual, &r)
		assert.Contains(t, text, ": 47 µm in the end instead of 56, smooth.")
		assert.False(t, seen[text], "%s reads like another", c)
		seen[text] = true
	}
}

func TestWhatIsLeftOutIsSaidWhereTheFigureStands(t *testing.T) {
	a := grown(44, 56)
	all := strings.Join(say.Ice(say.Usual, &a), " ")
	assert.Contains(t, all, "what the beaters break")
	assert.Contains(t, all, "yolk")
	assert.NotContains(t, all, "gums")
	assert.NotContains(t, all, "floor")
	assert.NotContains(t, all, "a guess")
	a.BeginsC = -0.6
	assert.Contains(t, say.IceNotModelled(say.Usual, &a), "a guess")
	a.Gums, a.AtC = true, -28
	all = strings.Join(say.Ice(say.Usual, &a), " ")
	assert.Contains(t, all, "1.2 times")
	assert.Contains(t, all, "floor")
}
