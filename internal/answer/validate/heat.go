package validate

import (
	"context"
	"fmt"
	"math"
	"math/rand"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/phase"
)

func heatChecks() []check {
	return []check{neumann, series, tub, rings, wall, slab, stillFreeze, insulated, plank, stillAir, airyConductivity}
}

const carslawJaeger = "Carslaw & Jaeger 1959, Conduction of Heat in Solids, 2nd ed., ch. XI"

func neumann(t *tables) ([]Row, error) {
	const name = "stefan_neumann"
	exact := Row{Table: name + " (exact solution)", Source: carslawJaeger, Unit: "mm", Bar: 1e-6, Kind: Twice, XLabel: "s", YLabel: "frozen depth, mm"}
	front := Row{Table: name, Source: carslawJaeger, Unit: "%", Bar: 0.1, Kind: Twice, XLabel: "s", YLabel: "frozen depth, mm",
		Note: flaw.Say("Two hours; case 1 with 50 cells of 4 mm, the others, whose front crosses few cells, with 400 of 0.5 mm.")}
	field := Row{Table: name + " (temperature)", Source: carslawJaeger, Unit: "K", Bar: 0.1, Kind: Twice, XLabel: "depth, mm", YLabel: "°C",
		Note: flaw.Say("Case 1 after two hours with cells of 2 mm.")}
	for _, l := range t.read(name) {
		n := heat.Neumann{SolidWPerMK: l.num("ks_W_mK"), LiquidWPerMK: l.num("kl_W_mK"), SolidJPerM3K: l.num("cs_J_m3K"), LiquidJPerM3K: l.num("cl_J_m3K"),
			LatentJPerM3: l.num("L_J_m3"), MeltingC: l.num("Tf_C"), StartC: l.num("T0_C"), FaceC: l.num("Ts_C")}
		f, err := n.Solve()
		if err != nil {
			return nil, err
		}
		at, first := l.num("t_s"), l.text("case") == "1"
		exact.add(at, 1e3*f.PositionM(at), l.num("front_mm")).Label = "case " + l.text("case")
		if at != 7200 {
			continue
		}
		cells := 400
		if first {
			cells = 50
		}
		got, _, err := heat.ComputedFrontM(n, 0.2, cells, at)
		if err != nil {
			return nil, err
		}
		front.addRelative(at, 1e3*got, l.num("front_mm")).Label = "case " + l.text("case")
		if !first {
			continue
		}
		_, cell, err := heat.ComputedFrontM(n, 0.2, 100, at)
		if err != nil {
			return nil, err
		}
		for j, got := range cell {
			x := (float64(j) + 0.5) * 0.002
			field.add(1e3*x, got, f.TemperatureC(x, at))
		}
	}
	return []Row{exact, front, field}, nil
}

func series(t *tables) ([]Row, error) {
	const name, source = "heisler_series", "Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5"
	exact := Row{Table: name + " (series)", Source: source, Unit: "of the start", Bar: 1e-7, Kind: Twice, XLabel: "Fourier number", YLabel: "share of the temperature difference left"}
	solver := Row{Table: name, Source: source, Unit: "of the start", Bar: 5e-4, Kind: Twice, XLabel: "Fourier number", YLabel: "mean, share of the temperature difference left",
		Note: flaw.Say("Slab, cylinder and sphere on 20 cells.")}
	surface := Row{Table: name + " (wall surface)", Source: source, Unit: "of the start", Bar: 1e-3, Kind: Twice, XLabel: "Fourier number", YLabel: "surface, share of the temperature difference left",
		Note: flaw.Say("Slab, cylinder and sphere on 20 even cells. The surface is found from the outermost cell, the half cell before it and the coefficient.")}
	shapes := map[string]heat.Shape{"slab": heat.PlaneWall, "cylinder": heat.LongCylinder, "sphere": heat.Ball}
	for _, l := range t.read(name) {
		shape, bi, fo := shapes[l.text("shape")], l.num("Bi"), l.num("Fo")
		s, err := heat.NewSeries(shape, bi)
		if err != nil {
			return nil, err
		}
		exact.add(fo, s.At(0, fo), l.num("Y_centre")).Label = l.text("shape") + ", centre"
		exact.add(fo, s.At(1, fo), l.num("Y_surface")).Label = l.text("shape") + ", surface"
		exact.add(fo, s.Mean(fo), l.num("Y_mean")).Label = l.text("shape") + ", mean"
		y, err := heat.ComputedMean(shape, bi, fo, 20)
		if err != nil {
			return nil, err
		}
		solver.add(fo, y, l.num("Y_mean")).Label = l.text("shape")
		if y, err = heat.ComputedSurface(shape, bi, fo, 20); err != nil {
			return nil, err
		}
		surface.add(fo, y, l.num("Y_surface")).Label = fmt.Sprintf("%s, Biot number %g", l.text("shape"), bi)
	}
	return []Row{exact, solver, surface}, nil
}

// thermal is one invented mix of phase_properties.csv, which tests the solver
// and not the freezing model.
func (t *tables) thermal(name string) (*heat.Material, error) {
	var temperature, u, k []float64
	for _, l := range t.read("phase_properties") {
		if l.text("phase") == name {
			temperature = append(temperature, l.num("T_C"))
			u = append(u, 1e6*l.num("u_MJ_m3"))
			k = append(k, l.num("k_W_mK"))
		}
	}
	return heat.NewMaterial(temperature, u, k)
}

const separately = "a separate program of another scheme on a finer mesh, invented mixes"

func standing(air, side, top, bottom float64) heat.Surroundings {
	return heat.Surroundings{Side: heat.Face{AmbientC: air, WPerM2K: side}, Top: heat.Face{AmbientC: air, WPerM2K: top}, Bottom: heat.Face{AmbientC: air, WPerM2K: bottom}}
}

// iceAt returns the temperature at which the custard of phase_properties.csv
// has a share of its water frozen, linear between the table's rows.
func (t *tables) iceAt(share float64) float64 {
	var lastT, lastIce float64
	for i, l := range t.read("phase_properties") {
		if l.text("phase") != "custard" {
			continue
		}
		at, ice := l.num("T_C"), l.num("ice_per_water")
		if i > 0 && ice <= share && lastIce > share {
			return lastT + (at-lastT)*(lastIce-share)/(lastIce-ice)
		}
		lastT, lastIce = at, ice
	}
	return math.NaN()
}

func slab(t *tables) ([]Row, error) {
	const name = "freezing_time_slab"
	solver := Row{Table: name, Source: separately, Unit: "%", Bar: 0.5, Kind: Twice, XLabel: "s in the reference", YLabel: "s to −10 °C in the middle",
		Note: flaw.Say("Full slabs of 20 to 250 mm. The food's heat capacity below freezing, which the table leaves unsaid, is taken to fall by 2.1 kJ/(kg K) per share of ice.")}
	formulas := Row{Table: name + " (between two formulas)", Source: "Cleland & Earle 1977 as in ASHRAE Refrigeration Handbook 2006, ch. 10; Pham 1986", Unit: "%", Bar: 15, Kind: Independent,
		XLabel: "s by Cleland & Earle", YLabel: "s to −10 °C in the middle",
		Note: flaw.Say("The published formulas differ by up to 20 % and the solver lies between them in every case; the error is against Cleland & Earle, whose range of −20 to −40 °C and h of 10 or more the last case (14 %) is outside of.")}
	for _, l := range t.read(name) {
		got, err := heat.ComputedSlabS(l.num("D_m"), l.num("h"), l.num("Ti_C"), l.num("Tm_C"))
		if err != nil {
			return nil, err
		}
		want, low, high := l.num("t_numeric"), l.num("t_cleland_earle"), l.num("t_pham")
		label := l.text("D_m") + " m, h " + l.text("h")
		solver.addRelative(want, got, want).Label = label
		if got < low || got > high {
			low = math.NaN() // fails the row
		}
		formulas.addRelative(low, got, low).Label = label
	}
	return []Row{solver, formulas}, nil
}

// insulated runs a body that nothing surrounds and one in a freezer, and
// compares the heat that came in with the heat that is there.
func insulated(t *tables) ([]Row, error) {
	drift := Row{Table: "heat kept by an insulated tub", Source: "conservation of energy", Unit: "relative", Bar: 1e-12, Kind: Identity, XLabel: "steps", YLabel: "heat"}
	balance := Row{Table: "heat through the faces", Source: "conservation of energy", Unit: "relative", Bar: 1e-10, Kind: Identity, XLabel: "J through the faces", YLabel: "J stored"}
	m, err := t.thermal("custard")
	if err != nil {
		return nil, err
	}
	mesh, err := heat.Cylinder(0.0425, 0.0834, 10, 20)
	if err != nil {
		return nil, err
	}
	random := rand.New(rand.NewSource(4))
	start := make([]float64, 200)
	for i := range start {
		start[i] = m.JPerM3(-25 + 40*random.Float64())
	}
	for _, c := range [...]struct {
		row       *Row
		around    heat.Surroundings
		hours     float64
		tolerance float64
	}{
		{&drift, heat.Surroundings{}, 400, 1e-7}, // some 500 steps
		{&balance, standing(-18, 6.76, 3.58, 6.76), 16, 0},
	} {
		out, err := heat.Solve(context.Background(), heat.Problem{Material: m, Mesh: mesh, FieldJPerM3: append([]float64(nil), start...),
			Segments: []heat.Segment{{ForS: c.hours * 3600, Surroundings: c.around}}}, heat.Options{Tolerance: c.tolerance})
		if err != nil {
			return nil, err
		}
		x, model, measured := out.Balance.InJ, out.Balance.StoredJ, out.Balance.InJ
		if c.row == &drift {
			x, model, measured = float64(out.Steps), out.Balance.ContentJ+out.Balance.StoredJ, out.Balance.ContentJ
		}
		c.row.addError(x, model, measured, out.Balance.Residual())
	}
	return []Row{drift, balance}, nil
}

func plank(*tables) ([]Row, error) {
	r := Row{Table: "Plank's freezing time", Source: "Singh & Heldman, Introduction to Food Engineering, ch. 7, worked example (as reprinted): a 7 cm sphere in 0.72 h; in 3 mm of plastic 1.037 h",
		Unit: "%", Bar: 0.5, Kind: Independent, XLabel: "h", YLabel: "h", Note: flaw.Say("The first answer is printed to two places, which alone is 0.7 %; half its last digit is taken off the error.")}
	for _, c := range [...]struct{ wall, want, digit float64 }{{0, 0.72, 0.005}, {0.003 / 0.2, 1.037, 0.0005}} {
		face := heat.Face{WPerM2K: 50, M2KPerW: c.wall}
		got := heat.PlankS(heat.Ball, 1000*250e3, 40-1.25, 0.07, face.OverallWPerM2K(), 1.2) / 3600
		off := math.Max(0, math.Abs(got-c.want)-c.digit)
		r.addError(c.want, got, c.want, 100*off/c.want)
	}
	return []Row{r}, nil
}

func stillAir(t *tables) ([]Row, error) {
	r := Row{Table: "surface_coefficients", Source: "Churchill & Chu 1975, Int. J. Heat Mass Transfer 18:1323, with radiation and frost, evaluated by a separate program", Unit: "%", Bar: 0.5, Kind: Twice,
		XLabel: "°C of the surface", YLabel: "W/(m² K)", Note: flaw.Say("Equal formulas, so this proves no kitchen: measured coefficients scatter by some 30 %.")}
	for _, l := range t.read(r.Table) {
		humidity := 0.0
		if l.num("h_latent") > 0 {
			humidity = 0.5
		}
		c, err := heat.StillAir(heat.UprightWall{HeightM: 0.083, Emissivity: 0.9, HumidityFraction: humidity}, l.num("T_surface_C"), l.num("T_air_C"))
		if err != nil {
			return nil, err
		}
		r.addRelative(l.num("T_surface_C"), c.TotalWPerM2K(), l.num("h_total"))
	}
	return []Row{r}, nil
}

func airyConductivity(t *tables) ([]Row, error) {
	r := Row{Table: "foam_conductivity", Source: "Maxwell–Eucken and Bruggeman as in Carson, Wang, North & Cleland 2016, J. Food Eng. 175:65, evaluated by a separate program", Unit: "W/(m K)", Bar: 0.0006, Kind: Twice,
		XLabel: "air, share of the volume", YLabel: "W/(m K) at −18 °C",
		Note: flaw.Say("Equal formulas, to the printed digit: the two ends of the band in which a foam lies. No measured conductivity of a foam as airy was found.")}
	air := phase.AirWPerMK(-18)
	for _, l := range t.read(r.Table) {
		overrun := l.num("overrun")
		phi := overrun / (1 + overrun)
		const body = 1.006 // W/(m K), of the table's mix without air
		r.add(phi, phase.MaxwellWPerMK(body, air, phi), l.num("k_maxwell")).Label = "a continuous body (Maxwell–Eucken)"
		r.add(phi, phase.BruggemanWPerMK(body, air, phi), l.num("k_bruggeman")).Label = "neither continuous (Bruggeman)"
	}
	return []Row{r}, nil
}
