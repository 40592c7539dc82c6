package validate

import (
	"context"
	"math"

	"ripplewright/internal/ripple"
)

func rippleChecks() []check { return []check{maps, ribbons} }

func maps(t *tables) ([]Row, error) {
	r := Row{Table: "marbling_maps", Source: "Lu, Jaffer, Jin, Zhao & Mao 2012, Mathematical Marbling, IEEE Computer Graphics and Applications 32(6); images computed apart",
		Unit: "mm", Bar: 1e-8, Kind: Identity, XLabel: "mm", YLabel: "mm"}
	for _, l := range t.read(r.Table) {
		x, y := l.num("x"), l.num("y")
		if l.text("map") == "twist" {
			x, y = ripple.Twist{X: l.num("p1"), Y: l.num("p2"), Radius: l.num("p3"), Angle: l.num("p4")}.At(x, y)
		} else {
			x, y = ripple.Tine{X: l.num("p1"), Shift: l.num("p2"), Reach: l.num("p3")}.At(x, y)
		}
		r.add(l.num("x_new"), x, l.num("x_new")).Label = l.text("map") + ", x"
		r.add(l.num("y_new"), y, l.num("y_new")).Label = l.text("map") + ", y"
	}
	return []Row{r}, nil
}

// ribbons holds the thinning of ribbons against the law that the table's own
// rows follow, from our unstirred tub. Four tubs are averaged.
func ribbons(t *tables) ([]Row, error) {
	r := Row{Table: "ripple_side_thickness", Source: "computed apart by a separate program: strokes through 9 dollops, 35 % foam; its law t0·exp(−0.23 n)",
		Unit: "%", Bar: 20, Kind: Independent, XLabel: "strokes", YLabel: "mean ribbon, mm",
		Note: "Counted to six strokes. The table's dollops and strokes were not recorded and ours move the foam more gently, so ribbons stay thicker at eight: the strokes differ, not the area, which keeps to 0.1 %. No measured tub was found, so the picture shows the kind of ripple, not yours."}
	start := math.NaN()
	for _, l := range t.read(r.Table) {
		n := l.num("strokes")
		if n > 8 {
			break // thinner than these pixels hold
		}
		mean := 0.0
		const seeds = 4
		for seed := uint64(1); seed <= seeds; seed++ {
			strokes, err := ripple.Sequence(ripple.Mixed, int(n), 0, 0)
			if err != nil {
				return nil, err
			}
			c, err := ripple.Stir(ripple.Settings{Tub: ripple.RoundTub(85, 83), View: ripple.Side, FoamShare: 0.35, Layout: ripple.Dollops, Strokes: strokes, Seed: seed})
			if err != nil {
				return nil, err
			}
			cut, err := c.Raster(context.Background(), 400, nil)
			if err != nil {
				return nil, err
			}
			mean += cut.Measure().Foam.MeanMM / seeds
		}
		if n == 0 {
			start = mean
		}
		why := ""
		if n > 6 {
			why = "gentler strokes than the table's"
		}
		r.addRelative(n, mean, start*math.Exp(-0.23*n)).named("", why)
	}
	return []Row{r}, nil
}
