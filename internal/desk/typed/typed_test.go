package typed_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/desk/typed"
)

func TestANumberIsReadAsPeopleTypeIt(t *testing.T) {
	for text, want := range map[string]float64{
		"12": 12, " 12,5 ": 12.5, "−3": -3, "–3": -3, "-3.25": -3.25, "40 %": 40, "40%": 40, "1 204": 1204, "1\u202f204,5": 1204.5, "+7": 7, ".5": .5,
	} {
		v, err := typed.Number(text, "%")
		assert.NoError(t, err, text)
		assert.Equal(t, want, v, text)
	}
	for _, text := range []string{"", " ", "%", "abc", "1.2.3", "1,234.5", "NaN", "inf", "-Infinity", "0x10", "1e5", "1_000", "12 g", "--1"} {
		_, err := typed.Number(text, "%")
		var bad *typed.NumberError
		assert.ErrorAs(t, err, &bad, text)
	}
}

func FuzzNumber(f *testing.F) {
	for _, s := range []string{"12,5 %", "−3", "1e400", "0x1p-2", "", "99999999999999999999999999"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, err := typed.Number(s, "%")
		if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Fatalf("%q read as %v", s, v)
		}
	})
}

func TestAnIDIsMadeOfAName(t *testing.T) {
	for name, id := range map[string]string{"Crème of figs (mill)": "creme_of_figs_mill", "70 % cocoa": "70_cocoa", "乳脂": "", " - ": ""} {
		assert.Equal(t, id, typed.ID(name), name)
	}
}
