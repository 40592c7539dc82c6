package report

import (
	"fmt"
	"io"
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

// The temperatures of a curve, °C: where phase.Body.At holds.
const (
	CurveColdest = -60.0
	CurveWarmest = 30.0
	MaxPoints    = 100_000
)

// Curve is both phases over temperature.
type Curve struct {
	File   string  `json:"file"`
	Name   string  `json:"name"`
	Points []Point `json:"points"`
}

// Point is one temperature of a curve. A phase without lines, or in no tub, is null.
type Point struct {
	TemperatureC Number      `json:"temperature_c"`
	Dense        *CurvePhase `json:"dense"`
	Foam         *CurvePhase `json:"foam"`
}

// CurvePhase is one phase at one temperature.
type CurvePhase struct {
	WaterFrozenPercent Number `json:"water_frozen_percent"`
	IceMassPercent     Number `json:"ice_mass_percent"`
	IceVolumePercent   Number `json:"ice_volume_percent"` // of the volume without air
	Hardness           Number `json:"hardness"`           // kPa
	Texture            string `json:"texture"`

	// OutsideRange names the solutes whose constants are used beyond their
	// range at this temperature.
	OutsideRange []string `json:"outside_range"`
}

// Temperatures returns from, from+step, …, up to and with to where the steps
// meet it, all °C. The error says which bound the numbers do not keep.
func Temperatures(from, to, step float64) ([]float64, error) {
	switch {
	case !(from >= CurveColdest && from <= CurveWarmest):
		return nil, flaw.New("from %v", outside(from))
	case !(to >= CurveColdest && to <= CurveWarmest):
		return nil, flaw.New("to %v", outside(to))
	case to < from:
		return nil, flaw.New("to %s is colder than from %s", Reads.TemperatureTo(to, 1), Reads.TemperatureTo(from, 1))
	case !(step > 0) || math.IsInf(step, 0):
		return nil, flaw.New("the step must be above 0 K, not %s", Reads.Number(step, 1))
	}
	n := math.Floor((to-from)/step*(1+1e-12) + 1e-9)
	if n >= MaxPoints {
		return nil, flaw.New("%g K makes more than %d points", step, MaxPoints)
	}
	ts := make([]float64, int(n)+1)
	for i := range ts {
		// Steps such as 0.1 have no exact binary form, so the sum is freed of
		// what no thermometer shows.
		ts[i] = math.Round((from+float64(i)*step)*1e9) / 1e9
	}
	return ts, nil
}

// outside says that a temperature is none that a curve has.
func outside(c float64) error {
	if w := setting.Outside(c, CurveColdest, CurveWarmest, "°C"); w != nil {
		return w
	}
	return flaw.New("is no temperature")
}

// CurveOf returns the curve of r at the temperatures ts.
func CurveOf(file, name string, r *model.Result, ts []float64) Curve {
	c := Curve{File: file, Name: name, Points: make([]Point, len(ts))}
	for i, t := range ts {
		c.Points[i] = Point{TemperatureC: Number(t), Dense: curvePhase(r, &r.Dense, t), Foam: curvePhase(r, &r.Foam, t)}
	}
	return c
}

func curvePhase(r *model.Result, p *model.Phase, t float64) *CurvePhase {
	if !r.Shown(p) {
		return nil
	}
	s := p.Body.At(t)
	out := &CurvePhase{
		WaterFrozenPercent: percent(s.FrozenFraction), IceMassPercent: percent(s.IceMassFraction),
		IceVolumePercent: percent(s.IceVolumeFraction), Hardness: Number(p.Body.HardnessKPa(&s)),
		Texture: p.Body.Word(&s).Name, OutsideRange: []string{},
	}
	if s.IceG > 0 { // without ice the freezing curve is not used
		out.OutsideRange = names(solution.Outside(p.Body.Mix, t))
	}
	return out
}

func names(species []mix.Species) []string {
	out := []string{}
	for _, s := range species {
		out = append(out, s.String())
	}
	return out
}

// WriteText writes the curve as a table with tabs, which a spreadsheet reads.
func (c Curve) WriteText(w io.Writer) error {
	if _, err := fmt.Fprint(w, "temperature_c\tdense_water_frozen_percent\tdense_ice_volume_percent\tdense_hardness_kpa\t"+
		"foam_water_frozen_percent\tfoam_ice_volume_percent\tfoam_hardness_kpa\n"); err != nil {
		return err
	}
	for _, p := range c.Points {
		if _, err := fmt.Fprintf(w, "%s\t%s\t%s\n", p.TemperatureC.text(2), p.Dense.cells(), p.Foam.cells()); err != nil {
			return err
		}
	}
	return nil
}

func (p *CurvePhase) cells() string {
	if p == nil {
		return "–\t–\t–"
	}
	return p.WaterFrozenPercent.text(2) + "\t" + p.IceVolumePercent.text(2) + "\t" + p.Hardness.text(3)
}
