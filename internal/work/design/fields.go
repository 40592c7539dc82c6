package design

import (
	"math"
	"slices"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/setting"
)

// field is one setting of a design: every choice that is not a line or an own
// ingredient. The table of fields is the one place that knows a setting's path,
// unit and range; checks, files, help texts and sliders read it here. Its At
// gives a *float64, *int, *int64 or *string.
type field = setting.Field[Design]

// Fields returns every setting, in the order of a design file. The caller
// must not change it.
func Fields() []setting.Field[Design] { return fields }

// labelFields are the settings of a label's words in other languages.
func labelFields() []field {
	var out []field
	for i, lang := range labelLanguages {
		out = append(out,
			field{Path: "label." + lang + ".name", About: "the food's name on a label in this language", Format: "words",
				Of: func(d *Design) any { return &d.Label.Words[i].Name }},
			field{Path: "label." + lang + ".ingredients", About: "its ingredients, in the order of the English list", Format: "words",
				Of: func(d *Design) any { return &d.Label.Words[i].Ingredients }})
	}
	return out
}

func notDurable(s string) error {
	if s == "" {
		return nil
	}
	_, err := onpack.ParseDurability(s)
	return err
}

// FieldAt returns the setting with that path.
func FieldAt(path string) (setting.Field[Design], bool) { return setting.Find(fields, path) }

// The limits that are no setting's. They are there to catch slips of the finger:
// a tonne in one bowl is no market stall.
const (
	MaxGrams = 1e6 // g in one line
	MaxName  = 200 // bytes of the design's name, which a file's name holds
	MaxPrice = 1e6 // per kg, or of a tub
	MaxCount = 1e4 // eggs in one line
	MaxLines = 500 // in one phase
	MaxOwn   = 500 // ingredients of the design's own
)

// colourPattern is what notColour lets pass.
const colourPattern = "^#[0-9a-fA-F]{6}$"

var fields = slices.Concat(beforeLabelWords, labelFields(), phaseFields)

var beforeLabelWords = []field{
	{Path: "name", About: "what the dessert is called", Format: "words, 200 bytes at most", Pattern: `\S`, Longest: MaxName, Wrong: notName,
		Of: func(d *Design) any { return &d.Name }},
	{Path: "notes", About: "anything to remember", Format: "words",
		Of: func(d *Design) any { return &d.Notes }},

	{Path: "serving.temperature_c", About: "temperature at which it is eaten", Unit: "°C", Min: -24, Max: -4,
		Of: func(d *Design) any { return &d.Serving.TemperatureC }},

	{Path: "tubs.count", About: "how many tubs", Min: 1, Max: 500,
		Of: func(d *Design) any { return &d.Tubs.Count }},
	{Path: "tubs.volume_ml", About: "one tub, to the brim", Unit: "mL", Min: 30, Max: 20000,
		Of: func(d *Design) any { return &d.Tubs.VolumeML }},
	{Path: "tubs.fill_percent", About: "how full it is filled", Unit: "%", Min: 10, Max: 100,
		Of: func(d *Design) any { return &d.Tubs.FillPercent }},
	{Path: "tubs.shape", About: "form of the tub",
		Choices: []string{string(ShapeRound), string(ShapeShallow), string(ShapeRectangle)},
		Of:      func(d *Design) any { return (*string)(&d.Tubs.Shape) }},
	{Path: "tubs.sells_for", About: "what one tub sells for, without VAT, in your own money; 0 if not said", Min: 0, Max: MaxPrice,
		Of: func(d *Design) any { return &d.Tubs.SellsFor }},

	{Path: "blend.foam_volume_percent", About: "foam, of the tub's volume", Unit: "%", Min: 0, Max: 100,
		Of: func(d *Design) any { return &d.Blend.FoamVolumePercent }},
	{Path: "blend.strokes", About: "strokes of the spoon", Min: 0, Max: 24,
		Of: func(d *Design) any { return &d.Blend.Strokes }},
	{Path: "blend.stroke_depth_percent", About: "how deep they go, of the filling; no less than two widths", Unit: "%", Min: 10, Max: 100,
		Of: func(d *Design) any { return &d.Blend.DepthPercent }},
	{Path: "blend.handle_mm", About: "width of what stirs, a spoon's handle", Unit: "mm", Min: 5, Max: 40,
		Of: func(d *Design) any { return &d.Blend.HandleMM }},
	{Path: "blend.layout", About: "how the phases are filled in before stirring",
		Choices: []string{"dollops", "layers", "halves", "spiral"},
		Of:      func(d *Design) any { return &d.Blend.Layout }},
	{Path: "blend.motion", About: "how the spoon moves",
		Choices: []string{"plunge", "fold", "eight", "drag", "mixed"},
		Of:      func(d *Design) any { return &d.Blend.Motion }},
	{Path: "blend.seed", About: "which of the many possible tubs is drawn", Min: math.MinInt64, Max: math.MaxInt64,
		Of: func(d *Design) any { return &d.Blend.Seed }},
	{Path: "blend.dense_colour", About: "colour of the custard", Format: "#rrggbb", Pattern: colourPattern, Wrong: notColour,
		Of: func(d *Design) any { return &d.Blend.DenseColour }},
	{Path: "blend.foam_colour", About: "colour of the foam", Format: "#rrggbb", Pattern: colourPattern, Wrong: notColour,
		Of: func(d *Design) any { return &d.Blend.FoamColour }},

	{Path: "batch.basis", About: "scale both phases to fill the tubs, or keep the lines' grams",
		Choices: []string{string(BasisTubs), string(BasisAsWritten)},
		Of:      func(d *Design) any { return (*string)(&d.Batch.Basis) }},

	{Path: "eggs.system", About: "size classes of the counted eggs", Choices: egg.Systems(),
		Of: func(d *Design) any { return &d.Eggs.System }},
	{Path: "eggs.size", About: "size of the counted eggs", Format: "US: peewee, small, medium, large, extra large, jumbo; EU: S, M, L, XL",
		Of: func(d *Design) any { return &d.Eggs.Size }},

	{Path: "kitchen.altitude_m", About: "above sea level", Unit: "m", Min: -400, Max: 4500,
		Of: func(d *Design) any { return &d.Kitchen.AltitudeM }},
	{Path: "kitchen.profile", About: "kitchen profile whose calibration applies", Format: "a name",
		Of: func(d *Design) any { return &d.Kitchen.Profile }},

	{Path: "model.bound_water_protein", About: "water that never freezes, per g protein", Unit: "g/g", Min: 0, Max: 0.8,
		Of: func(d *Design) any { return &d.Model.ProteinGPerG }},
	{Path: "model.bound_water_fibre", About: "the same, per g starch and fibre", Unit: "g/g", Min: 0, Max: 0.6,
		Of: func(d *Design) any { return &d.Model.FibreGPerG }},

	{Path: "label.energy_method", About: "energy by 4-4-9 or by the records' Atwater factors",
		Choices: []string{"general", "specific"},
		Of:      func(d *Design) any { return &d.Label.EnergyMethod }},
	{Path: "label.portion", About: `portion of an EU label in words with its grams, as "2 scoops (80 g)"; "" for a US serving`, Format: "words",
		Of: func(d *Design) any { return &d.Label.Portion }},
	{Path: "label.durability", About: "for how long it keeps, as you have found out", Format: "90d or 6m", Wrong: notDurable,
		Of: func(d *Design) any { return &d.Label.Durability }},
	{Path: "label.storage", About: "how to keep it, on the label; \"\" for the language's own words", Format: "words",
		Of: func(d *Design) any { return &d.Label.Storage }},
}

var phaseFields = []field{
	{Path: "dense.stove_loss_percent", About: "water driven off, of the phase's mass", Unit: "%", Min: 0, Max: 60,
		Of: func(d *Design) any { return &d.Dense.StoveLossPercent }},
	{Path: "dense.overrun_percent", About: "air, of the volume without it", Unit: "%", Min: 0, Max: 150,
		Of: func(d *Design) any { return &d.Dense.OverrunPercent }},

	{Path: "foam.syrup.cook_temperature_c", About: "what the thermometer shows at the end", Unit: "°C", Min: 100, Max: 150,
		Of: func(d *Design) any { return &d.Foam.Syrup.CookTemperatureC }},
	{Path: "foam.syrup.weighed_g", About: "syrup found by weighing the pan, 0 if not weighed", Unit: "g", Min: 0, Max: MaxGrams,
		Of: func(d *Design) any { return &d.Foam.Syrup.WeighedG }},
	{Path: "foam.syrup.inverted_percent", About: "sucrose that acid splits while boiling; with acid in the syrup 5 is usual (from memory)", Unit: "%", Min: 0, Max: 60,
		Of: func(d *Design) any { return &d.Foam.Syrup.InvertedPercent }},
	{Path: "foam.overrun_percent", About: "air, of the volume without it", Unit: "%", Min: 0, Max: 900,
		Of: func(d *Design) any { return &d.Foam.OverrunPercent }},
}
