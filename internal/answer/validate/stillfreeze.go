package validate

import (
	"context"
	"math"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/num"
)

func stillFreeze(t *tables) ([]Row, error) {
	open := Row{Table: "still_freeze_reference", Source: separately, Unit: "%", Bar: 2, Kind: Twice, XLabel: "h in the reference", YLabel: "h to a third and to half of the water frozen",
		Note: flaw.Say("Stirred every 25 minutes. The table's rounding, 0.005 h, is taken off the error.")}
	lidded := Row{Table: "still_freeze_reference (under a lid)", Source: separately, Unit: "%", Bar: 2, Kind: Twice, XLabel: "h in the reference", YLabel: "h to half of the water frozen"}
	m, err := t.thermal("custard")
	if err != nil {
		return nil, err
	}
	third, half := t.iceAt(0.33), t.iceAt(0.50)
	gap := math.NaN() // W/(m² K), of the air under the lid
	for _, l := range t.read(open.Table) {
		levels := []heat.Level{{Of: heat.Mean, AtC: third}, {Of: heat.Mean, AtC: half}}
		if l.text("h_top") != "lid" {
			got, err := stirred(l, m, heat.Face{AmbientC: l.num("T_air_C"), WPerM2K: l.num("h_top")}, levels)
			if err != nil {
				return nil, err
			}
			for i, column := range [...]string{"t_ice033_h", "t_ice050_h"} {
				open.addRounded(got[i], l.num(column)).Label = l.text("case")
			}
			continue
		}
		want := l.num("t_ice050_h")
		under := func(gap float64) (float64, error) {
			lid := heat.Face{AmbientC: l.num("T_air_C"), WPerM2K: l.num("h_side"), M2KPerW: 0.002/0.2 + 1/gap}
			got, err := stirred(l, m, lid, levels[1:])
			if err != nil {
				return math.NaN(), err
			}
			return got[0], nil
		}
		why := ""
		if math.IsNaN(gap) {
			why = "the air under the lid is found from this one"
			gap, err = num.Root(func(gap float64) float64 {
				got, failed := under(gap)
				if failed != nil {
					return math.NaN()
				}
				return got - want
			}, 0.6, 6, 1e-3)
			if err != nil {
				return nil, err
			}
		}
		got, err := under(gap)
		if err != nil {
			return nil, err
		}
		lidded.addRounded(got, want).named(l.text("case")+", every "+l.text("stir_every_min")+" min", why)
	}
	lidded.Note = flaw.Say("2 mm of plastic over 40 mm of air. What the air carries is not in the table: it is found from the first box, which is not counted, and the other three are computed with it. It is %.1f W/(m² K), less than still air with radiation across it would carry (about 4).", gap)
	return []Row{open, lidded}, nil
}

// stirred returns the hours at which the dish of a line of still_freeze_reference
// passes the levels, under the given top.
func stirred(l line, m *heat.Material, top heat.Face, levels []heat.Level) (hours []float64, err error) {
	mesh, err := heat.Cylinder(l.num("R_mm")/1e3, l.num("depth_mm")/1e3, 12, 16)
	if err != nil {
		return nil, err
	}
	around := standing(l.num("T_air_C"), l.num("h_side"), 0, l.num("h_bottom"))
	around.Top = top
	out, err := heat.Solve(context.Background(), heat.Problem{
		Material: m, Mesh: mesh, StartC: 4,
		Segments: []heat.Segment{{ForS: 12 * 3600, Surroundings: around}},
		Stirring: heat.Stirring{EveryS: 60 * l.num("stir_every_min")},
		Levels:   levels,
	}, heat.Options{StopEarly: true})
	for _, s := range out.CrossingsS {
		hours = append(hours, s/3600)
	}
	return hours, err
}

// addRounded counts hours printed to 0.01, half a unit of which is taken off the
// error in percent.
func (r *Row) addRounded(got, want float64) *Pair {
	off := math.Max(0, math.Abs(got-want)-0.005)
	return r.addError(want, got, want, math.Copysign(100*off/want, got-want))
}
