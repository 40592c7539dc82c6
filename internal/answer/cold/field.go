package cold

import (
	"slices"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
)

// field is one setting of a profile. The table is the one place that knows a
// setting's path, unit and range; files and editors read it here. Its At gives a
// *float64 or *string.
type field = setting.Field[Profile]

// Fields returns every setting in the order of the file. The caller must not
// change it.
func Fields() []setting.Field[Profile] { return fields }

const perArea = "W/(m² K)"

var fields = slices.Concat([]field{
	{Path: "name", About: "what the kitchen is called", Wrong: notEmpty, Of: func(p *Profile) any { return &p.Name }},
	{Path: "about", About: "anything to remember", Of: func(p *Profile) any { return &p.About }},
},
	place("freezer", -40, -2, func(p *Profile) *Place { return &p.Freezer }),
	[]field{{Path: "freezer.swing_k", About: "how far its air goes up and down", Unit: "K", Min: 0, Max: 10, Of: func(p *Profile) any { return &p.SwingK }},
		{Path: "freezer.openings_per_day", About: "how often its door stands open", Unit: "a day", Min: 0, Max: 50, Of: func(p *Profile) any { return &p.Openings }}},
	place("counter", 5, 45, func(p *Profile) *Place { return &p.Counter }),
	place("refrigerator", 0.5, 15, func(p *Profile) *Place { return &p.Refrigerator }),
	[]field{
		{Path: "package.wall_resistance", About: "tub wall, thickness over conductivity", Unit: "m² K/W", Min: 0, Max: 1, Of: func(p *Profile) any { return &p.Package.WallM2KPerW }},
		{Path: "package.lid_resistance", About: "lid and head space", Unit: "m² K/W", Min: 0, Max: 3, Of: func(p *Profile) any { return &p.Package.LidM2KPerW }},
		{Path: "layer.form", About: "what a phase freezes in", Choices: []string{string(FormDish), string(FormBowl), string(FormBox)}, Of: func(p *Profile) any { return (*string)(&p.Layer.Form) }},
		{Path: "layer.depth_mm", About: "how deep, 0 for the form's own", Unit: "mm", Min: 0, Max: 200, Least: 5, Of: func(p *Profile) any { return &p.Layer.DepthMM }},
		{Path: "layer.start_c", About: "how cold it goes in", Unit: "°C", Min: 0, Max: 40, Of: func(p *Profile) any { return &p.Layer.StartC }},
		{Path: "layer.stir_every_min", About: "minutes between stirs, 0 to stir by the edge", Unit: "min", Min: 0, Max: 240, Least: 5, Of: func(p *Profile) any { return &p.Layer.StirEveryMinutes }},
		{Path: "layer.edge_ice_percent", About: "ice of the edge's water at which to stir", Unit: "%", Min: 5, Max: 80, Of: func(p *Profile) any { return &p.Layer.EdgeIcePercent }},
		{Path: "layer.shelf_coefficient", About: "below the dish, 0 as the freezer's shelf", Unit: perArea, Min: 0, Max: 500, Of: func(p *Profile) any { return &p.Layer.ShelfWPerM2K }},
		{Path: "layer.dish_cm2", About: "floor of one dish", Unit: "cm²", Min: 50, Max: 5000, Of: func(p *Profile) any { return &p.Layer.DishCM2 }},
		{Path: "layer.beating", About: "what beats the custard in its dish", Choices: []string{string(ByHand), string(Never)}, Of: func(p *Profile) any { return (*string)(&p.Layer.Beating) }},

		{Path: "stove.pan_mm", About: "inside width of the syrup's pan", Unit: "mm", Min: 80, Max: 500, Of: func(p *Profile) any { return &p.Stove.PanMM }},
		{Path: "stove.flame_w", About: "heat that reaches the pan", Unit: "W", Min: 50, Max: 5000, Of: func(p *Profile) any { return &p.Stove.FlameW }},
		{Path: "stove.flame_measured", About: "the timed boil that the heat comes from", Of: func(p *Profile) any { return &p.Stove.FlameMeasured }},
		{Path: "stove.probe_boils_c", About: "what the probe shows in boiling water, 0 if never checked", Unit: "°C", Min: 0, Max: 110, Least: 80, Of: func(p *Profile) any { return &p.Stove.ProbeBoilsC }},

		{Path: "bowl.grams", About: "weight of the mixing bowl", Unit: "g", Min: 50, Max: 10000, Of: func(p *Profile) any { return &p.Bowl.Grams }},
		{Path: "bowl.material", About: "what it is made of", Choices: []string{"steel", "glass", "plastic"}, Of: func(p *Profile) any { return &p.Bowl.Material }},
		{Path: "bowl.whites_c", About: "how warm the whites go in", Unit: "°C", Min: 0, Max: 45, Of: func(p *Profile) any { return &p.Bowl.WhitesC }},
		{Path: "bowl.pour", About: "how the syrup is poured", Choices: []string{"stream", "at_once"}, Of: func(p *Profile) any { return &p.Bowl.Pour }},

		{Path: "bowl.tool", About: "what beats the foam", Choices: []string{"hand_mixer", "stand_mixer", "whisk", "churn"}, Of: func(p *Profile) any { return &p.Bowl.Tool }},

		{Path: "freezer.litres", About: "its size", Unit: "L", Min: 10, Max: 2000, Of: func(p *Profile) any { return &p.FreezerL }},
		{Path: "freezer.rated_kg", About: "what it freezes in a day by its plate, 0 if unknown", Unit: "kg", Min: 0, Max: 500, Least: 1, Of: func(p *Profile) any { return &p.FreezerRatedKG }},
		{Path: "freezer.free_shelf_cm2", About: "shelf that is free", Unit: "cm²", Min: 100, Max: 50000, Of: func(p *Profile) any { return &p.FreeShelfCM2 }},

		{Path: "churn.bowl_ml", About: "what a churn's bowl takes before its air, 0 without a churn", Unit: "mL", Min: 0, Max: 20000, Least: 300, Of: func(p *Profile) any { return &p.Churn.BowlML }},
		{Path: "churn.kind", About: "what freezes the custard, a tray beaten by hand or a churn", Choices: []string{"any", "tray", "frozen_bowl", "batch_freezer"}, Of: func(p *Profile) any { return &p.Churn.Kind }},

		{Path: "cook.from_h", About: "hour from which you work", Unit: "h", Min: 0, Max: 23, Of: func(p *Profile) any { return &p.Cook.FromHours }},
		{Path: "cook.to_h", About: "hour until which you work, over 24 past midnight", Unit: "h", Min: 1, Max: 30, Of: func(p *Profile) any { return &p.Cook.ToHours }},
		{Path: "cook.wash_up_min", About: "minutes to wash the beaters between two uses", Unit: "min", Min: 0, Max: 60, Of: func(p *Profile) any { return &p.Cook.WashUpMinutes }},
	})

func place(name string, coldest, warmest float64, of func(*Profile) *Place) []field {
	return []field{
		{Path: name + ".air_c", About: "temperature of its air", Unit: "°C", Min: coldest, Max: warmest, Of: func(p *Profile) any { return &of(p).AirC }},
		{Path: name + ".humidity_percent", About: "humidity of the air", Unit: "%", Min: 0, Max: 100, Of: func(p *Profile) any { return &of(p).HumidityPercent }},
		{Path: name + ".coefficient", About: "how fast its air takes heat away, 0 for still air", Unit: perArea, Min: 0, Max: 200, Of: func(p *Profile) any { return &of(p).CoefficientWPerM2K }},
		{Path: name + ".shelf_coefficient", About: "the same below the tub, 0 as all round", Unit: perArea, Min: 0, Max: 500, Of: func(p *Profile) any { return &of(p).ShelfWPerM2K }},
		{Path: name + ".factor", About: "times as fast as that, from a measured time", Min: minFactor, Max: maxFactor, Of: func(p *Profile) any { return &of(p).Factor }},
		{Path: name + ".measured", About: "what was measured for that", Of: func(p *Profile) any { return &of(p).Measured }},
	}
}

// The range of a calibration: beyond it something else is wrong.
const minFactor, maxFactor = 0.2, 5

// FieldError says what is wrong with one setting of a profile.
type FieldError struct {
	Line    int    // in the file, from 1; 0: not from a file
	Profile string // its name
	Path    string
	Err     error
}

// Words are the place and what is wrong there.
func (e *FieldError) Words() error {
	return flaw.InLine(e.Line, flaw.New("kitchen profile %s: %v", echo.Quoted(e.Profile), flaw.At(echo.Plain(e.Path), e.Err)))
}

func (e *FieldError) Error() string { return e.Words().Error() }

func (e *FieldError) Unwrap() error { return e.Err }

// Validate returns the first thing wrong with p, a *FieldError, or nil.
func (p Profile) Validate() error {
	for _, f := range fields {
		if err := f.Check(&p); err != nil {
			return &FieldError{Profile: p.Name, Path: f.Path, Err: err}
		}
	}
	if day := p.Cook.ToHours - p.Cook.FromHours; !(day > 0 && day <= 24) {
		return &FieldError{Profile: p.Name, Path: "cook.to_h", Err: flaw.New("must come after cook.from_h, by 24 hours at most")}
	}
	return nil
}

func notEmpty(name string) error {
	if strings.TrimSpace(name) == "" {
		return flaw.New("must not be empty")
	}
	return nil
}
