package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Outcome says what was wished for, what comes out and whether that will do.
func Outcome(s Style, o *balance.Outcome) string {
	if o.Wish.Of.Standard.ID != "" {
		return named(s, o)
	}
	if in, ok := o.Wish.Of.Pieces(); ok {
		if o.Met {
			return T("%s: as wished", Capital(pieces(in)))
		}
		return T("%s: not kept, %s of one off", Capital(pieces(in)), s.Short(o.Value, 2))
	}
	text := Capital(Of(o.Wish.Of.About)) + ": " + Wished(s, o.Wish.Of, o.Value)
	if o.Met {
		return T("%s, as wished (%s)", text, wishBand(s, &o.Wish))
	}
	return T("%s, not %s", text, wishBand(s, &o.Wish))
}

// named says whether the limits of a name of food are kept, and which are not.
func named(s Style, o *balance.Outcome) string {
	what := Capital(wishName(&o.Wish))
	if o.Met {
		return T("%s: every limit that can be computed is kept, as wished", what)
	}
	var lacks []string
	for _, l := range o.Lacks {
		text := Said(l.What)
		if l.Own != nil {
			text += " " + s.with(s.Short(*l.Own, 2), l.Unit)
		}
		lacks = append(lacks, T("%s, not %s", text, Said(l.Bound)))
	}
	return T("%s: not kept: %s", what, strings.Join(lacks, "; "))
}

// pieces names what should be whole: the eggs, or the packs of an ingredient.
func pieces(in *ingredient.Ingredient) string {
	if in == nil {
		return T("whole eggs")
	}
	return T("whole packs of %s", Kitchen(in))
}

// wishName names what is wished for.
func wishName(w *balance.Wish) string {
	if id := w.Of.Standard.ID; id != "" {
		return T("%s as %s", Of(w.Of.About), StandardName(id))
	}
	if in, ok := w.Of.Pieces(); ok {
		return pieces(in)
	}
	return Of(w.Of.About)
}

// Wished is a value of a quantity that can be wished for.
func Wished(s Style, q *balance.Quantity, v float64) string {
	switch q.Unit {
	case "kPa":
		return s.Hardness(v)
	case "%":
		return s.Percent(v, 1)
	case "°C":
		return s.TemperatureTo(v, 1)
	case "g":
		return s.MassTo(v, 1)
	case "kcal", "min":
		return s.with(s.Number(v, 0), q.Unit)
	case "% of a limit":
		return T("%s of a limit short", s.Percent(v, 1))
	}
	return s.Short(v, 2)
}

func wishBand(s Style, w *balance.Wish) string {
	low, high := Wished(s, w.Of, w.Low), Wished(s, w.Of, w.High)
	switch {
	case math.IsInf(w.Low, 0):
		return T("at most %s", high)
	case math.IsInf(w.High, 0):
		return T("at least %s", low)
	case low == high:
		return low
	}
	return T("%s to %s", low, high)
}

// Conflict says what a wish pulls against: "Hardness of the custard, 1.0 kPa to
// 2.0 kPa, and sweetness of the custard, 11.0 % to 12.0 %, pull against each other."
func Conflict(s Style, c *balance.Conflict, all []balance.Outcome) string {
	this := func(w *balance.Wish) string {
		if _, whole := w.Of.Pieces(); whole || w.Of.Standard.ID != "" {
			return wishName(w)
		}
		return wishName(w) + " (" + wishBand(s, w) + ")"
	}
	switch {
	case c.Alone:
		return T("%s is out of reach with these ingredients; the nearest is %s.", Capital(this(&c.Wish)), Wished(s, c.Wish.Of, c.Nearest))
	case len(c.Against) == 0 && len(c.Cautions) > 0:
		names := make([]string, len(c.Cautions))
		for i, code := range c.Cautions {
			names[i] = CautionName(code)
		}
		return T("%s costs %s; without that the nearest is %s.", Capital(this(&c.Wish)), List(names), Wished(s, c.Wish.Of, c.Nearest))
	case len(c.Against) == 1:
		return T("%s and %s pull against each other.", Capital(this(&c.Wish)), this(&all[c.Against[0]].Wish))
	}
	others := make([]string, len(c.Against))
	for i, k := range c.Against {
		others[i] = this(&all[k].Wish)
	}
	if len(others) == 0 {
		return T("%s is not met.", Capital(this(&c.Wish)))
	}
	return T("%s cannot be had together with %s.", Capital(this(&c.Wish)), List(others))
}

// GivesWay heads an alternative: what it meets that the nearest design does not, and what
// gives way for it; or that it does as well by other means.
func GivesWay(s Style, nearest, other []balance.Outcome) string {
	var meets, not []string
	for i := range other {
		w := &other[i].Wish
		switch {
		case other[i].Met && !nearest[i].Met:
			meets = append(meets, wishName(w))
		case !other[i].Met && nearest[i].Met:
			not = append(not, wishName(w)+", "+Wished(s, w.Of, other[i].Value))
		}
	}
	switch {
	case len(meets) == 0:
		return T("By other means:")
	case len(not) == 0:
		return T("With the %s as wished:", List(meets))
	}
	return T("With the %s as wished, but not the %s:", List(meets), List(not))
}

// ChangeName names what a change moves: "sugar, custard".
func ChangeName(c *balance.Change) string {
	if c.Ingredient != nil {
		return Kitchen(c.Ingredient) + ", " + Part(c.Part)
	}
	if name, ok := settingNames[c.Path]; ok {
		return name.String()
	}
	return c.Path
}

// settingNames name the settings that a search moves in a column of changes.
var settingNames = map[string]Message{
	"serving.temperature_c":         "served at",
	"dense.overrun_percent":         "air in the custard",
	"foam.overrun_percent":          "air in the foam",
	"foam.syrup.cook_temperature_c": "syrup cooked to",
	"foam.syrup.weighed_g":          "weight of the pan",
	"blend.foam_volume_percent":     "foam in the tub",
	"tubs.fill_percent":             "tubs filled to",
	"tubs.count":                    "tubs at a time",
	"dense.stove_loss_percent":      "cooked off the custard",
}

// ChangeValues is what stood there before and what comes: "31 g", "57 g".
func ChangeValues(s Style, c *balance.Change) (before, after string) {
	value := func(v float64) string {
		switch {
		case c.Pieces:
			return s.Short(v, 2)
		case c.Ingredient != nil && v == 0:
			return T("none")
		case c.Ingredient != nil:
			return s.Mass(v)
		}
		switch unit := SettingUnit(c.Path); unit {
		case "°C":
			return s.TemperatureTo(v, 1)
		case "%":
			return s.Percent(v, 0)
		case "g":
			return s.Mass(v)
		}
		return s.Short(v, 1)
	}
	return value(c.Before), value(c.After)
}

// SettingUnit is the unit of a setting of a design, "" of a count.
func SettingUnit(path string) string {
	f, _ := design.FieldAt(path)
	return strings.TrimSpace(f.Unit)
}

// The words of the page of wishes.
const (
	BalanceTitle Message = "Ask for a tub"
	WishesTitle  Message = "What do you want?"
	WishesAbout  Message = "Leave open what does not matter. Lines that are locked on the bench stay as they are."
	AnyTexture   Message = "any"
	WishCustard  Message = "Custard"
	WishFoam     Message = "Foam"
	WishSweet    Message = "Sweetness of the custard, from"
	WishTo       Message = "to"
	WishName     Message = "Name of the custard"
	WishMore     Message = "And, from and to; what is left empty is open:"
	WishIce      Message = "The foam keeps its ice in this kitchen's freezer"
	WishEggs     Message = "Whole eggs only; to crack:"
	WishServe    Message = "The serving temperature may move"
	WishAdds     Message = "May come in:"
	WishAdd      Message = "Choose…"
	WishNoAdds   Message = "nothing else"
	WishAddTitle Message = "What may come in"

	WishPacks        Message = "Whole packs of:"
	WishNoPacks      Message = "nothing"
	WishPackTitle    Message = "What comes in packs"
	WishPackHolds    Message = "One pack holds"
	WishCautions     Message = "No caution of:"
	WishAnyCaution   Message = "any kind"
	WishCautionTitle Message = "What must not be"

	WishCounts   Message = "What counts more: 1 is ordinary, 0 leaves it at that; whole eggs and packs at 0 hold whatever they cost"
	FindWeights  Message = "Find the weights"
	AnswerTitle  Message = "What to weigh"
	NothingAsked Message = "Say what you want and press Find the weights: the design nearest to yours that has it, and others that have it by other means, come here."
	Looking      Message = "Looking…"
	NearestTitle Message = "The nearest that can be had"
	MetTitle     Message = "This has it"
	NothingMoves Message = "The design has it already: nothing needs to change."
	SureTitle    Message = "How often does it turn out?"
)

// WishCounted name the wishes of the page that count more or less.
func WishCounted() []string {
	return []string{T("texture of the custard"), T("texture of the foam"), T("name of the custard"), T("sweetness of the custard"), T("ice in the foam"), T("whole eggs"), T("whole packs"), T("cautions"), T("the other figures")}
}

// ChangeHeads head a table of changes.
func ChangeHeads() []string { return []string{T("now"), T("then")} }

// The words of the map.
const (
	MapTitle   Message = "Blends of its sugars"
	MapAbout   Message = "As much sugar as now, of other kinds: how sweet and how hard each phase then is where it is served. Press a point to take it."
	MapCustard Message = "custard"
	MapFoam    Message = "foam"
	MapNow     Message = "now"
	MapOthers  Message = "found"
	MapSweet   Message = "sweetness, % as sucrose"
	MapHard    Message = "hardness, kPa"
	BlendStep  Message = "blend of sugars"
)

// Spot says what a point of the map is: "Custard of 60 g sugar and 30 g dextrose:
// sweetness 12.3 %, 2.5 kPa, scoopable".
func Spot(s Style, x *balance.Spot) string {
	what := Capital(Of(x.Role.String()))
	var parts []string
	for _, g := range x.Sugars {
		parts = append(parts, s.Mass(g.Grams)+" "+Kitchen(g.Ingredient))
	}
	if len(parts) > 0 {
		what = T("%s with %s", what, List(parts))
	}
	return T("%s: sweetness %s, %s, %s", what, s.Percent(x.Sweetness, 1), s.Hardness(x.KPa), Of(phase.WordFor(x.KPa).Name))
}

// StandardName is the name of food with that id, with where it holds.
func StandardName(id string) string {
	place, name, found := strings.Cut(id, "_")
	switch {
	case found && place == "eu":
		return T("%s, the EU trade's code", strings.ReplaceAll(name, "_", " "))
	case found && place == "uk":
		return T("%s, the UK trade's guide", strings.ReplaceAll(name, "_", " "))
	}
	return T("%s, US", strings.ReplaceAll(id, "_", " "))
}

// WishFigure names a figure that can be wished for, with its unit.
func WishFigure(s Style, q *balance.Quantity) string {
	if q.Unit == "" || strings.Contains(q.About, "minutes") {
		return Of(q.About)
	}
	return Of(q.About) + ", " + s.Gauge(q.Unit).Unit
}

// TradeAbout stands under the curve of what one wish costs another.
const TradeAbout Message = "What one costs the other. Press a point to see its design."

// TradeAxis is the axis of a wish, whose values are to be shown by TradeGauge.
func TradeAxis(s Style, w *balance.Wish) string {
	if w.Of.Standard.ID != "" {
		return T("%s, %% of a limit short", wishName(w))
	}
	return WishFigure(s, w.Of)
}

// TradeGauge is how the values of a wish are read: those of a name of food are per cent.
func TradeGauge(s Style, w *balance.Wish) Gauge {
	if w.Of.Standard.ID != "" {
		return s.Gauge("")
	}
	return s.Gauge(w.Of.Unit)
}

// TradePoint says a point of it: "hardness of the custard 4.2 kPa, sweetness of the
// custard 14.1 %".
func TradePoint(s Style, c *balance.Conflict, all []balance.Outcome, t *balance.Trade) string {
	text := Capital(wishName(&c.Wish)) + " " + Wished(s, c.Wish.Of, t.Value)
	for n, k := range c.Against {
		other := &all[k].Wish
		text += ", " + wishName(other) + " " + Wished(s, other.Of, t.Against[n])
	}
	return text + "."
}

// WishPack names an ingredient with what a pack of it holds: "heavy cream, 200 g a pack".
func WishPack(s Style, in *ingredient.Ingredient, grams float64) string {
	return T("%s, %s a pack", Kitchen(in), s.Mass(grams))
}
