package tub

import (
	"fmt"
	"strings"
	"testing"

	"ripplewright/internal/work/design"
)

// A colour that a design takes is painted as it is written.
func FuzzColour(f *testing.F) {
	for _, s := range []string{"#d9a441", "#D9A441", "#fff", "#12345g", "d9a441", "", "#+1+2+3", "# 1 2 3", "#é1234"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d := design.New()
		before := len(design.Validate(d))
		d.Blend.FoamColour = s
		if len(design.Validate(d)) > before {
			return
		}
		c := Style(d).Foam
		if got := fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B); !strings.EqualFold(got, s) {
			t.Fatalf("%q is painted as %s", s, got)
		}
	})
}
