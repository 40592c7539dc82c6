package validate

import (
	"fmt"
	"math"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/heat"
)

// tub holds a pint against the times of another program: the mean and the slowest
// cell on even cells, as hardening is computed, the ring on a tub's own.
func tub(t *tables) ([]Row, error) {
	const name = "pint_reference"
	row := func(what string, bar float64) Row {
		return Row{Table: name + " (" + what + ")", Source: separately, Unit: "%", Bar: bar, Kind: Twice, XLabel: "s in the reference", YLabel: "s to the target temperature",
			Note: flaw.Say("A tub of 85 by 83 mm on 15 × 30 even cells against 40 × 80.")}
	}
	hot, mean := row("hardening, slowest cell", 0.1), row("hardening, mean", 0.5)
	thawHot, thawMean := row("tempering, slowest cell", 1), row("tempering, mean", 1.5)
	ring, thawRing := row("hardening, outer ring", 0.5), row("tempering, outer ring", 1)
	for _, r := range [...]*Row{&ring, &thawRing} {
		r.Note = flaw.Say("A tub of 85 by 83 mm on the cells of every tub on the counter, graded towards the faces, against 40 × 80 even ones. The outer 10 mm, evened out.")
	}
	even, err := heat.Cylinder(0.0425, 0.0834, 15, 30)
	if err != nil {
		return nil, err
	}
	graded, err := heat.Tub(0.0425, 0.0834)
	if err != nil {
		return nil, err
	}
	for _, l := range t.read(name) {
		m, err := t.thermal(l.text("phase"))
		if err != nil {
			return nil, err
		}
		air := l.num("Tamb_C")
		around := standing(air, l.num("Uside"), l.num("Utop"), l.num("Ubot"))
		slowest, average, _, err := heat.ComputedTimesS(m, even, l.num("T0_C"), around, l.num("end_s"), l.num("target_C"))
		if err != nil {
			return nil, err
		}
		_, _, outer, err := heat.ComputedTimesS(m, graded, l.num("T0_C"), around, l.num("end_s"), l.num("target_C"))
		if err != nil {
			return nil, err
		}
		a, b, c := &hot, &mean, &ring
		if air > 0 {
			a, b, c = &thawHot, &thawMean, &thawRing
		}
		label := l.text("case") + ", " + l.text("phase")
		if want := l.num("t_hot_s"); !math.IsNaN(want) {
			a.addRelative(want, slowest, want).Label = label
		}
		want := l.num("t_eq_s")
		b.addRelative(want, average, want).Label = label
		want = l.num("t_shell_s")
		c.addRelative(want, outer, want).Label = label
	}
	return []Row{hot, mean, ring, thawHot, thawMean, thawRing}, nil
}

const finerMesh = "the same solver on a much finer mesh: it checks the cells, not the physics"

// room is the counter of pint_reference.csv.
func room() heat.Surroundings { return standing(22, 9.52, 4, 9.52) }

// rings holds the outer ring of tubs of all sizes against a finer mesh.
func rings(t *tables) ([]Row, error) {
	r := Row{Table: "outer ring of tubs of four sizes", Source: finerMesh, Unit: "%", Bar: 1, Kind: Identity, XLabel: "L", YLabel: "s to −12 °C in the outer 10 mm",
		Note: flaw.Say("From −18 °C on a counter of 22 °C. 15 × 26 cells from 1.25 mm at the faces against 40 × 70 from 0.5 mm; custard and pure foam, from a quarter of a litre as high as wide to 20 L of 120 mm depth. On 15 × 30 even cells the 20 L were 23 % late, in pure foam 89 %.")}
	for _, phase := range [...]string{"custard", "foam 2:1"} {
		m, err := t.thermal(phase)
		if err != nil {
			return nil, err
		}
		for _, v := range [...]struct{ litres, height float64 }{{0.25, 0.068}, {2, 0.137}, {5, 0.12}, {20, 0.12}} {
			radius := math.Sqrt(v.litres * 1e-3 / math.Pi / v.height)
			mesh, err := heat.Tub(radius, v.height)
			if err != nil {
				return nil, err
			}
			fine, err := heat.Graded(radius, v.height, 40, 70, 0.0005)
			if err != nil {
				return nil, err
			}
			const long = 3600 // s, beyond every one of them
			_, _, got, err := heat.ComputedTimesS(m, mesh, -18, room(), long, -12)
			if err != nil {
				return nil, err
			}
			_, _, want, err := heat.ComputedTimesS(m, fine, -18, room(), long, -12)
			if err != nil {
				return nil, err
			}
			r.addRelative(v.litres, got, want).Label = fmt.Sprintf("%s, %g L", phase, v.litres)
		}
	}
	return []Row{r}, nil
}

// wall holds the time at which a tub's surface reaches a temperature against the
// number of its rings.
func wall(t *tables) ([]Row, error) {
	r := Row{Table: "wall surface on meshes of several rings", Source: finerMesh, Unit: "%", Bar: 1.5, Kind: Identity, XLabel: "rings", YLabel: "s to −6 °C at the wall's surface",
		Note: flaw.Say("A pint of seven parts custard and three of foam, from −18 °C on a counter of 22 °C: even rings, and a tub's own 15 × 26 cells, against 240 rings. The mean of the outermost cell, read instead of the surface, comes late by what the cell is thick.")}
	m, err := t.thermal("ripple70")
	if err != nil {
		return nil, err
	}
	at := func(mesh heat.Mesh, err error) (float64, error) {
		if err != nil {
			return math.NaN(), err
		}
		return heat.ComputedWallS(m, mesh, -18, room(), 4*3600, -6)
	}
	want, err := at(heat.Cylinder(0.0425, 0.0834, 240, 30))
	if err != nil {
		return nil, err
	}
	for _, rings := range [...]int{10, 15, 30, 60, 120} {
		got, err := at(heat.Cylinder(0.0425, 0.0834, rings, 30))
		if err != nil {
			return nil, err
		}
		r.addRelative(float64(rings), got, want).Label = "even"
	}
	got, err := at(heat.Tub(0.0425, 0.0834))
	if err != nil {
		return nil, err
	}
	r.addRelative(15, got, want).Label = "a tub's own"
	return []Row{r}, nil
}
