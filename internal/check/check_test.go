package check

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// recorder is a test that may fail without failing the one it is in.
type recorder struct {
	testing.TB
	failed bool
}

func (r *recorder) Helper()               {}
func (r *recorder) Errorf(string, ...any) { r.failed = true }

func TestWhatIsPrintedIsMetToHalfItsLastDigit(t *testing.T) {
	for _, c := range []struct {
		got   float64
		want  string
		meets bool
	}{
		{3.35, "3.35", true}, {3.3549, "3.35", true}, {3.345, "3.35", true}, {3.356, "3.35", false}, {3.344, "3.35", false},
		{3.34, "3.3", true}, {3.34, "3.30", false}, {-18.4, "-18", true}, {-18.6, "-18", false},
		{3536.58941, "0.353658941e4", true}, {3536.58942, "0.353658941e4", false},
		{math.NaN(), "3.35", false}, {math.Inf(1), "3.35", false},
	} {
		r := &recorder{TB: t}
		assert.Equal(t, c.meets, Printed(r, c.got, c.want), "%v as %s", c.got, c.want)
		assert.Equal(t, !c.meets, r.failed, "%v as %s", c.got, c.want)
	}
}

func TestATableOfOursIsRead(t *testing.T) {
	for _, r := range Table(t, "sucrose_freezing_point") {
		assert.Positive(t, r.Num("mass_pct"))
		r.Printed(r.Num("fpd_C"), "fpd_C")
	}
}
