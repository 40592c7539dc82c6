package validate

import (
	"context"
	"fmt"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ripple"
)

func rippleChecks() []check { return []check{maps, ribbons, lines, spoonfuls} }

func maps(t *tables) ([]Row, error) {
	r := Row{Table: "marbling_maps", Source: "Lu, Jaffer, Jin, Zhao & Mao 2012, Mathematical Marbling, IEEE Computer Graphics and Applications 32(6); images computed apart",
		Unit: "mm", Bar: 1e-8, Kind: Twice, XLabel: "mm", YLabel: "mm"}
	for _, l := range t.read(r.Table) {
		x, y := l.num("x"), l.num("y")
		if l.text("map") == "twist" {
			x, y = ripple.Twist{XMM: l.num("p1"), YMM: l.num("p2"), RadiusMM: l.num("p3"), AngleRad: l.num("p4")}.At(x, y)
		} else {
			x, y = ripple.Tine{XMM: l.num("p1"), ShiftMM: l.num("p2"), ReachMM: l.num("p3")}.At(x, y)
		}
		r.add(l.num("x_new"), x, l.num("x_new")).Label = l.text("map") + ", x"
		r.add(l.num("y_new"), y, l.num("y_new")).Label = l.text("map") + ", y"
	}
	return []Row{r}, nil
}

// ribbons holds the thinning of ribbons against the tables, each of which is one
// tub whose dollops were not recorded, by the mean of many of ours.
func ribbons(t *tables) ([]Row, error) {
	side := Row{Table: "ripple_side_thickness", Source: "computed apart by a separate program: one tub of 9 dollops, 35 % foam, strokes of 35 mm (plunge, sweep, plunge, fold)",
		Unit: "%", Bar: 10, Kind: Regression, XLabel: "strokes", YLabel: "mean ribbon, mm",
		Note: flaw.Say("Counted to six strokes; the width of our strokes was chosen to follow this table. Where its dollops and strokes lie was not recorded, so the mean of eight of our tubs stands against its one: a single tub of ours scatters by 4 % at one stroke and 16 % at six, and no closer comparison means anything. No measured tub was found, so the picture shows the kind of ripple, not yours.")}
	top := Row{Table: "ripple_top_thickness", Source: "computed apart by a separate program: one disc, 35 % foam, swirls of 2.2 rad at golden angles",
		Unit: "%", Bar: 10, Kind: Twice, XLabel: "swirls", YLabel: "mean ribbon, mm",
		Note: flaw.Say("Our plunges are the table's swirls, a little shaken; its dollops were not recorded. The mean of eight of our tubs, each of which scatters by 8 to 15 %.")}
	for _, c := range [...]struct {
		row    *Row
		column string
		view   ripple.View
		motion string
		last   float64
		why    string
	}{
		{&side, "strokes", ripple.Side, ripple.Mixed, 6, "the table's tub is thinner than most here"},
		{&top, "swirls", ripple.Top, ripple.Plunge.String(), 11, ""},
	} {
		for _, l := range t.read(c.row.Table) {
			n := l.num(c.column)
			if n > 11 {
				break // thinner than these pixels hold
			}
			mm, err := meanRibbon(c.view, c.motion, int(n))
			if err != nil {
				return nil, err
			}
			why := ""
			if n > c.last {
				why = c.why
			}
			c.row.addRelative(n, mm, l.num("mean_thickness_mm")).named("", why)
		}
	}
	return []Row{side, top}, nil
}

// meanRibbon returns the mean ribbon of the foam in eight tubs stirred n times, mm.
func meanRibbon(view ripple.View, motion string, n int) (mm float64, err error) {
	strokes, err := ripple.Sequence(motion, n, 0, 0)
	if err != nil {
		return 0, err
	}
	const seeds = 8
	for seed := uint64(1); seed <= seeds; seed++ {
		cut, err := ripple.Stir(ripple.Settings{Tub: ripple.RoundTub(85, 83), View: view, FoamFraction: 0.35, Strokes: strokes, Seed: seed})
		if err != nil {
			return 0, err
		}
		raster, err := cut.Raster(context.Background(), 300, nil)
		if err != nil {
			return 0, err
		}
		mm += raster.Measure().Foam.MeanMM / seeds
	}
	return mm, nil
}

// lines holds the length of the interface by lines against the interface carried
// forward through the strokes.
func lines(*tables) ([]Row, error) {
	r := Row{Table: "ribbons by lines at every stroke", Source: "the interface carried forward through the strokes point by point: another way through the same map",
		Unit: "%", Bar: 3, Kind: Identity, XLabel: "strokes", YLabel: "interface, mm",
		Note: flaw.Say("Mean thickness is twice a phase's area over this length. Lines through the map meet ribbons that no pixel holds: counted on pixels, a third of the interface is lost at 18 strokes and two thirds at 24.")}
	for _, view := range [...]ripple.View{ripple.Side, ripple.Top} {
		for _, n := range [...]int{0, 3, 6, 12, 18} {
			cut, raster, err := stirredTub(view, n, 0.35, 3, 64)
			if err != nil {
				return nil, err
			}
			m := raster.Measure()
			r.addRelative(float64(n), m.InterfaceMM, cut.InterfaceByAdvectionMM(0.5)).Label = fmt.Sprintf("%s, %d lines", view, m.Lines)
		}
	}
	return []Row{r}, nil
}

// spoonfuls holds the mean spoonful of tubs of many seeds against the tub.
func spoonfuls(*tables) ([]Row, error) {
	const share = 0.40
	r := Row{Table: "mean spoonful over seeds", Source: "what a tub holds is what its spoonfuls hold together", Unit: "points of foam", Bar: 0.2, Kind: Identity,
		XLabel: "seed", YLabel: "foam in the mean spoonful, %",
		Note: flaw.Say("Ten tubs of 40 % foam and eight strokes, cut upright and level. A spoon at a wall takes what is there and counts for as much; by the spoons that fit whole, these ten gave 43.9 %.")}
	for _, view := range [...]ripple.View{ripple.Side, ripple.Top} {
		for seed := uint64(1); seed <= 10; seed++ {
			_, raster, err := stirredTub(view, 8, share, seed, 200)
			if err != nil {
				return nil, err
			}
			r.add(float64(seed), 100*raster.Spoon(ripple.SpoonML, ripple.FoamShare).Mean, 100*share).Label = view.String()
		}
	}
	return []Row{r}, nil
}

// stirredTub returns a pint stirred n times in mixed strokes.
func stirredTub(view ripple.View, n int, share float64, seed uint64, px int) (*ripple.Cut, *ripple.Raster, error) {
	strokes, err := ripple.Sequence(ripple.Mixed, n, 0, 0)
	if err != nil {
		return nil, nil, err
	}
	cut, err := ripple.Stir(ripple.Settings{Tub: ripple.RoundTub(85, 83), View: view, FoamFraction: share, Strokes: strokes, Seed: seed})
	if err != nil {
		return nil, nil, err
	}
	raster, err := cut.Raster(context.Background(), px, nil)
	return cut, raster, err
}
