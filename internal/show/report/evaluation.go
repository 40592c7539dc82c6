package report

import (
	"math"
	"slices"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// Evaluation is everything that a design comes to, as JSON and as text. It
// chooses figures from package figure and lays them out.
type Evaluation struct {
	file   string
	design design.Design
	result *model.Result
	found  *balance.Remedies
	cold   *cold.Answer // nil: nobody asked, as of JSON, where it would be slow
}

// Timed returns e with the times of the cold, which its text tells.
func (e Evaluation) Timed(c *cold.Answer) Evaluation {
	e.cold = c
	return e
}

// Reads is how the maker reads quantities on the command line, in its text and in
// the sentences of its JSON: the one place that a setting of units and signs
// would change. The figures of the JSON keep their units.
var Reads = say.Usual

// Evaluate returns the report of r, which is what d, read from file, comes to,
// with the remedies that were found for it, nil where none were looked for.
func Evaluate(file string, d design.Design, r *model.Result, found *balance.Remedies) Evaluation {
	return Evaluation{file, d, r, found, nil}
}

// MarshalJSON returns one object; "ripplecalc help json" tells its keys.
func (e Evaluation) MarshalJSON() ([]byte, error) {
	r := e.result
	foam := phaseObject(r, figure.Foam)
	foam.put("syrup", syrupObject(r))
	var o object
	o.put("file", e.file)
	o.put("name", e.design.Name)
	o.put("serving_temperature_c", Number(e.design.Serving.TemperatureC))
	o.put("verdict", object{{"good", r.Verdict.Good}, {"sentence", say.Verdict(Reads, r.Verdict)}, {"advice", say.Advice(Reads, r.Verdict, e.found, nil)}})
	o.put("dense", phaseObject(r, figure.Custard))
	o.put("foam", foam)
	o.put("blend", tubObject(r))
	o.put("batch", object{{"dense", numbers(&figure.Batch, r, figure.Custard)}, {"foam", numbers(&figure.Batch, r, figure.Foam)}})
	o.put("nutrition", nutritionObject(r))
	o.put("allergens", list(r.Allergens.US))
	o.put("allergens_eu", list(r.Allergens.EU))
	o.put("allergens_not_stated_for", list(r.Allergens.Unstated))
	o.put("lines", lineObjects(r))
	o.put("eggs", eggsObject(r))
	o.put("cost", costObject(r))
	o.put("warnings", warningObjects(r.Warnings))
	o.put("learnt", learnt(r.Taught))
	return o.MarshalJSON()
}

// learnt is what batches have taught of the custard's hardness and of the recipe, null for
// nothing.
func learnt(t model.Taught) any {
	if t == (model.Taught{}) {
		return nil
	}
	o := object{{"readings", t.Readings}, {"hardness_factor", nil}, {"scatter_factor", nil}}
	if t.Known() {
		o.set("hardness_factor", Number(t.HarderFactor))
		o.set("scatter_factor", Number(t.ScatterFactor))
	}
	recipe := []object{}
	for i, l := range t.Recipe {
		if !l.Known() {
			continue
		}
		low, value, high, unit := l.Mean-l.Half, l.Mean, l.Mean+l.Half, "points"
		if model.Making(i).IsRatio() {
			low, value, high, unit = math.Exp(low), math.Exp(value), math.Exp(high), "ratio"
		}
		recipe = append(recipe, object{{"factor", model.Making(i).String()}, {"unit", unit}, {"readings", l.Readings},
			{"value", Number(value)}, {"low", Number(low)}, {"high", Number(high)}})
	}
	o.put("recipe", recipe)
	return o
}

func costObject(r *model.Result) object {
	o := object{{"currency", nil}}
	if r.Cost.Currency != "" {
		o.set("currency", r.Cost.Currency)
	}
	o = append(o, numbers(&figure.Cost, r, 0)...)
	missing := []string{}
	for _, in := range r.Cost.Missing {
		missing = append(missing, in.Name)
	}
	o.put("missing", missing)
	return o
}

// list returns s, never nil, so that JSON has a list.
func list(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

// jsonOf is a figure in JSON: a number, a word, or null.
func jsonOf(f *figure.Row, v figure.Value) any {
	if f.Unit != figure.Words {
		return Number(v.Value)
	}
	if v.Bound == figure.Unknown {
		return nil
	}
	return v.Word
}

// numbers holds the figures of a table's column.
func numbers(t *figure.Table, r *model.Result, column int) object {
	var o object
	for i := range t.Rows {
		if f := &t.Rows[i]; f.In(column) {
			o.put(f.Key, jsonOf(f, f.Of(r, column)))
		}
	}
	return o
}

// figures is numbers with their bands and bounds.
func figures(t *figure.Table, r *model.Result, column int) object {
	o, bands, bounds := numbers(t, r, column), object{}, object{}
	for i := range t.Rows {
		f := &t.Rows[i]
		if !f.In(column) {
			continue
		}
		v := f.Of(r, column)
		if f.WithBand || v.Made {
			bands.put(f.Key, Ends{Number(v.Low), Number(v.High)})
		}
		switch {
		case v.Open():
			bounds.put(f.Key, bound{Number(v.Low), Number(v.High)})
		case v.Bound == figure.AtLeast:
			bounds.put(f.Key, bound{Number(v.Value), unknown})
		case v.Bound == figure.AtMost:
			bounds.put(f.Key, bound{unknown, Number(v.Value)})
		}
	}
	o.put("bands", bands)
	o.put("bounds", bounds)
	return o
}

// bound is what is known of a figure that is no exact one.
type bound struct {
	AtLeast Number `json:"at_least"`
	AtMost  Number `json:"at_most"` // null where nothing bounds it
}

func phaseObject(r *model.Result, column int) object {
	o := figures(&figure.Phases, r, column)
	o.put("sugars_by_kind_percent", kindsObject(r, column))
	return o
}

// kindsObject holds the sugars and sugar alcohols that are present.
func kindsObject(r *model.Result, column int) object {
	o := object{}
	for i := range figure.Kinds.Rows {
		f := &figure.Kinds.Rows[i]
		if v := f.Of(r, column); v.Value > 0 {
			o.put(f.Key, Number(v.Value))
		}
	}
	return o
}

func syrupObject(r *model.Result) any {
	if !r.Syrup.Present || r.Absent(&r.Foam) {
		return nil
	}
	o := numbers(&figure.Syrup, r, 0)
	v := figure.Syrup.Row("solids_percent").Of(r, 0)
	o.put("solids_percent_band", Ends{Number(v.Low), Number(v.High)})
	o.put("cook_temperature_reached", r.Syrup.Reached)
	return o
}

func tubObject(r *model.Result) object {
	o := phaseObject(r, figure.Tub)
	o.put("scoop_contrast_at_least", figure.Phases.Row("scoop_contrast_k").Of(r, figure.Tub).Bound == figure.AtLeast)
	return o
}

func nutritionObject(r *model.Result) object {
	n := &r.Nutrition
	var o object
	if n.TotalMassG > 0 {
		o.put("energy_method", n.EnergyMethod.String())
	} else {
		o.put("energy_method", nil)
	}
	o = append(o, numbers(&figure.Servings, r, 0)...)
	o.put("per_100_g", numbers(&figure.Nutrition, r, figure.Per100G))
	o.put("per_serving", numbers(&figure.Nutrition, r, figure.PerServing))
	gaps := []object{}
	for i := range figure.Nutrition.Rows {
		f := &figure.Nutrition.Rows[i]
		if v := f.Of(r, figure.Per100G); v.Open() {
			gaps = append(gaps, object{{"nutrient", f.Key}, {"ingredients", whoLacks(n.Incomplete, f.Record())}, {"upper_per_100_g", Number(v.High)}})
		}
	}
	o.put("incomplete", gaps)
	return o
}

// whoLacks returns the ids of the ingredients that leave column c unknown; for
// the energy, those that leave unknown what it is counted from.
func whoLacks(gaps []model.Gap, c ingredient.Column) []string {
	from := []ingredient.Column{c}
	if c == ingredient.Energy {
		from = []ingredient.Column{ingredient.Fat, ingredient.Carbohydrate, ingredient.Fibre, ingredient.Protein}
	}
	who := []string{}
	for _, g := range gaps {
		if slices.Contains(from, g.Column) {
			who = append(who, g.Ingredients...)
		}
	}
	slices.Sort(who)
	return slices.Compact(who)
}

func lineObjects(r *model.Result) []object {
	out := []object{}
	for i := range r.Lines {
		l := &r.Lines[i]
		o := object{{"part", l.Part.String()}, {"index", l.Index}, {"ingredient", l.Ingredient.ID}, {"name", l.Ingredient.Name}}
		o = append(o, numbers(&figure.Lines, r, i)...)
		o.put("per_gram", numbers(&figure.PerGram, r, i))
		out = append(out, o)
	}
	return out
}

func eggsObject(r *model.Result) any {
	if !r.Eggs.Known {
		return nil
	}
	return numbers(&figure.Eggs, r, 0)
}

func warningObjects(of []model.Warning) []object {
	out := []object{}
	for _, w := range of {
		out = append(out, object{{"code", w.Code}, {"message", say.Warning(Reads, w)}, {"where", w.Where}, {"severity", w.Severity.String()}})
	}
	return out
}
