package cold

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ripplewright/internal/form/echo"
)

// Field describes one setting of a profile. The table is the one place that
// knows a setting's path, unit and range; files and editors read it here.
type Field struct {
	Path    string // place in profiles.yaml, as in "freezer.air_c"
	About   string
	Unit    string
	Min     float64
	Max     float64
	Least   float64  // where a slider begins if 0 stands for something else
	Choices []string // the words allowed; nil: any

	at func(*Profile) any
}

// At returns a pointer to the field's value in p: a *float64 or *string.
func (f Field) At(p *Profile) any { return f.at(p) }

// Fields returns every setting in the order of the file. The caller must not
// change it.
func Fields() []Field { return fields }

const perArea = "W/(m² K)"

var fields = slices.Concat([]Field{
	{Path: "name", About: "what the kitchen is called", at: func(p *Profile) any { return &p.Name }},
	{Path: "about", About: "anything to remember", at: func(p *Profile) any { return &p.About }},
},
	place("freezer", -40, -2, func(p *Profile) *Place { return &p.Freezer }),
	[]Field{{Path: "freezer.swing_k", About: "how far its air goes up and down", Unit: "K", Min: 0, Max: 10, at: func(p *Profile) any { return &p.SwingK }}},
	place("counter", 5, 45, func(p *Profile) *Place { return &p.Counter }),
	place("refrigerator", 0.5, 15, func(p *Profile) *Place { return &p.Refrigerator }),
	[]Field{
		{Path: "package.wall_resistance", About: "tub wall, thickness over conductivity", Unit: "m² K/W", Min: 0, Max: 1, at: func(p *Profile) any { return &p.Package.WallResistance }},
		{Path: "package.lid_resistance", About: "lid and head space", Unit: "m² K/W", Min: 0, Max: 3, at: func(p *Profile) any { return &p.Package.LidResistance }},
		{Path: "layer.form", About: "what a phase freezes in", Choices: []string{string(FormDish), string(FormBowl), string(FormBox)}, at: func(p *Profile) any { return (*string)(&p.Layer.Form) }},
		{Path: "layer.depth_mm", About: "how deep, 0 for the form's own", Unit: "mm", Min: 0, Max: 200, Least: 5, at: func(p *Profile) any { return &p.Layer.DepthMM }},
		{Path: "layer.start_c", About: "how cold it goes in", Unit: "°C", Min: 0, Max: 40, at: func(p *Profile) any { return &p.Layer.StartC }},
		{Path: "layer.stir_every_min", About: "minutes between stirs, 0 to stir by the edge", Unit: "min", Min: 0, Max: 240, Least: 5, at: func(p *Profile) any { return &p.Layer.StirEveryMin }},
		{Path: "layer.edge_ice_percent", About: "ice of the edge's water at which to stir", Unit: "%", Min: 5, Max: 80, at: func(p *Profile) any { return &p.Layer.EdgeIcePercent }},
		{Path: "layer.shelf_coefficient", About: "below the dish, 0 as the freezer's shelf", Unit: perArea, Min: 0, Max: 500, at: func(p *Profile) any { return &p.Layer.ShelfCoefficient }},
	})

func place(name string, coldest, warmest float64, of func(*Profile) *Place) []Field {
	return []Field{
		{Path: name + ".air_c", About: "air", Unit: "°C", Min: coldest, Max: warmest, at: func(p *Profile) any { return &of(p).AirC }},
		{Path: name + ".humidity_percent", About: "humidity of the air", Unit: "%", Min: 0, Max: 100, at: func(p *Profile) any { return &of(p).HumidityPercent }},
		{Path: name + ".coefficient", About: "outside coefficient, 0 for still air", Unit: perArea, Min: 0, Max: 200, at: func(p *Profile) any { return &of(p).Coefficient }},
		{Path: name + ".shelf_coefficient", About: "below, 0 as all round", Unit: perArea, Min: 0, Max: 500, at: func(p *Profile) any { return &of(p).ShelfCoefficient }},
		{Path: name + ".factor", About: "on the coefficients, from a measured time", Min: minFactor, Max: maxFactor, at: func(p *Profile) any { return &of(p).Factor }},
		{Path: name + ".measured", About: "what the factor rests on", at: func(p *Profile) any { return &of(p).Measured }},
	}
}

// The range of a calibration: beyond it something else is wrong.
const minFactor, maxFactor = 0.2, 5

// FieldError says what is wrong with one setting of a profile.
type FieldError struct {
	Line    int    // in the file, from 1; 0: not from a file
	Profile string // its name
	Path    string
	Message string
}

func (e *FieldError) Error() string {
	var b strings.Builder
	if e.Line > 0 {
		fmt.Fprintf(&b, "line %d: ", e.Line)
	}
	fmt.Fprintf(&b, "kitchen profile %s: ", echo.Quoted(e.Profile))
	if e.Path != "" {
		b.WriteString(echo.Plain(e.Path) + ": ")
	}
	return b.String() + e.Message
}

// Validate returns the first thing wrong with p, a *FieldError, or nil.
func (p Profile) Validate() error {
	for _, f := range fields {
		if m := f.check(&p); m != "" {
			return &FieldError{Profile: p.Name, Path: f.Path, Message: m}
		}
	}
	return nil
}

func (f Field) check(p *Profile) string {
	switch v := f.at(p).(type) {
	case *float64:
		n := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
		switch {
		case math.IsNaN(*v) || math.IsInf(*v, 0):
			return "must be a finite number"
		case *v < f.Min || *v > f.Max:
			return strings.TrimSpace(fmt.Sprintf("%s is outside %s to %s %s", n(*v), n(f.Min), n(f.Max), f.Unit))
		}
	case *string:
		if f.Choices != nil && !slices.Contains(f.Choices, *v) {
			return fmt.Sprintf("%s is not one of %s", echo.Quoted(*v), strings.Join(f.Choices, ", "))
		}
		if f.Path == "name" && strings.TrimSpace(*v) == "" {
			return "must not be empty"
		}
	}
	return ""
}
