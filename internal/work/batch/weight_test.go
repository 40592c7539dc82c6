package batch_test

import (
	"math"
	"testing"

	"ripplewright/internal/work/batch"
)

// What is read is written so that it reads back.
func FuzzParseWeight(f *testing.F) {
	for _, s := range []string{"dense sucrose 118 g", "foam.syrup sugar 0g", "foam egg_white 1e3", "dense a NaN", "dense a -1", "dense a 0x1p4 g", "a b", "", "dense  \t x 5 g g"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		w, err := batch.ParseWeight(s)
		if err != nil {
			return
		}
		if math.IsNaN(w.Grams) || w.Grams < 0 || w.Ingredient == "" {
			t.Fatalf("%q is %+v", s, w)
		}
		if again, err := batch.ParseWeight(w.String()); err != nil || again != w {
			t.Fatalf("%q is %v, then %v: %v", s, w, again, err)
		}
	})
}
