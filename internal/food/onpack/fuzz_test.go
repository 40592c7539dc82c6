package onpack_test

import (
	"testing"
	"time"

	"ripplewright/internal/food/onpack"
)

func FuzzParseTub(f *testing.F) {
	for _, s := range []string{"97,80,83", "box:120,80,60", "BOX: 15,600,15", "97,80", "NaN,80,83", "1e400,1,1", "0x1p5,80,83", "-97,80,83"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		tub, err := onpack.ParseTub(s)
		if err != nil {
			return
		}
		if box := tub.LengthMM > 0; box == (tub.TopMM > 0) {
			t.Fatalf("%q is %+v", s, tub)
		}
		for _, mm := range []float64{tub.TopMM + tub.LengthMM, tub.BottomMM + tub.BreadthMM, tub.HeightMM} {
			if !(mm >= 15 && mm <= 600) {
				t.Fatalf("%q has a side of %v mm", s, mm)
			}
		}
	})
}

// What is read is written so that it reads back, and its date lies ahead.
func FuzzParseDurability(f *testing.F) {
	for _, s := range []string{"90d", "6m", " 1d ", "+5d", "1100d", "1101d", "0m", "-1d", "5dm", "99999999999999999999d", "d"} {
		f.Add(s)
	}
	made := time.Date(2026, 1, 31, 0, 0, 0, 0, time.UTC)
	f.Fuzz(func(t *testing.T, s string) {
		d, err := onpack.ParseDurability(s)
		if err != nil {
			return
		}
		if again, err := onpack.ParseDurability(d.String()); err != nil || again != d {
			t.Fatalf("%q is %v, then %v: %v", s, d, again, err)
		}
		if last := onpack.BestBeforeOf(made, d).Last; !last.After(made) || last.After(made.AddDate(3, 0, 7)) {
			t.Fatalf("%q ends on %v", s, last)
		}
	})
}
