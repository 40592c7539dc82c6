package ripple

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

// testdata/tables/marbling_maps.csv, its sources in its first line.
func TestMapsCarryPointsAsTabulated(t *testing.T) {
	for _, r := range check.Table(t, "marbling_maps") {
		var x, y float64
		switch r.Text("map") {
		case "twist":
			x, y = Twist{r.Num("p1"), r.Num("p2"), r.Num("p3"), r.Num("p4")}.At(r.Num("x"), r.Num("y"))
		case "tine":
			x, y = Tine{XMM: r.Num("p1"), ShiftMM: r.Num("p2"), ReachMM: r.Num("p3")}.At(r.Num("x"), r.Num("y"))
		default:
			t.Fatalf("%v: no map is called %q", r, r.Text("map"))
		}
		r.Printed(x, "x_new")
		r.Printed(y, "y_new")
	}
}

type smoothMap interface {
	At(x, y float64) (float64, float64)
	Jacobian(x, y float64) [4]float64
}

func TestClosedFormMapsKeepAreaAndMeetDifferences(t *testing.T) {
	r := stream(3, 0)
	for i := 0; i < 500; i++ {
		w := Twist{r.between(20, 60), r.between(20, 60), r.between(5, 42), r.between(-4, 4)}
		n := Tine{r.between(20, 60), r.between(-30, 30), r.between(2, 20)}
		x, y := r.between(0, 85), r.between(0, 85)
		for _, pair := range [][2]smoothMap{{w, w.Inverse()}, {n, n.Inverse()}} {
			m, back := pair[0], pair[1]
			j := m.Jacobian(x, y)
			assert.InDelta(t, 1, j[0]*j[3]-j[1]*j[2], 1e-12)

			const e = 1e-5
			ax, ay := m.At(x+e, y)
			bx, by := m.At(x-e, y)
			cx, cy := m.At(x, y+e)
			dx, dy := m.At(x, y-e)
			for k, d := range [4]float64{ax - bx, cx - dx, ay - by, cy - dy} {
				assert.InDelta(t, j[k], d/(2*e), 2e-6*(1+math.Abs(j[k])), "%#v, derivative %d", m, k)
			}

			fx, fy := m.At(x, y)
			fx, fy = back.At(fx, fy)
			assert.InDelta(t, x, fx, 1e-12*100)
			assert.InDelta(t, y, fy, 1e-12*100)
		}
	}
}

func TestPullingUndoesATwist(t *testing.T) {
	w := Twist{40, 30, 25, 2}
	for x := 20.0; x < 60; x += 3 {
		ax, ay := w.Inverse().At(x, 33)
		xs, ys := []float64{x}, []float64{33}
		w.pull(xs, ys)
		assert.InDelta(t, ax, xs[0], 1e-12)
		assert.InDelta(t, ay, ys[0], 1e-12)
	}
}

// A loop of a figure eight is one round of the handle, of which the fluid beside
// it follows as large a share as it does of a straight pull from above; the two
// loops turn against each other. The angle is a round number: bar 6 %.
func TestALoopTurnsByWhatTheFluidFollowsOfARound(t *testing.T) {
	for _, v := range []View{Side, Top} {
		twists := Stroke{Kind: FigureEight}.place(saltmarsh.outline(v), v, 5, 1).twists
		require.Len(t, twists, 2)
		assert.InEpsilon(t, 2*math.Pi*carriedTop, twists[0].AngleRad, 0.06)
		assert.InDelta(t, 0, twists[0].AngleRad+twists[1].AngleRad, 1e-12)
	}
}

// Inverse returns the tine that undoes t.
func (t Tine) Inverse() Tine {
	t.ShiftMM = -t.ShiftMM
	return t
}

// Jacobian returns the derivatives of At: ∂x′/∂x, ∂x′/∂y, ∂y′/∂x, ∂y′/∂y. On
// the line itself, where there is a crease, it is that of the right side.
func (t Tine) Jacobian(x, _ float64) [4]float64 {
	slope := -math.Ln2 / t.ReachMM * t.ShiftMM * math.Exp2(-math.Abs(x-t.XMM)/t.ReachMM)
	if x < t.XMM {
		slope = -slope
	}
	return [4]float64{1, 0, slope, 1}
}
