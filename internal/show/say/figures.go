package say

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
)

// AboutFigures explains the table of all figures.
func AboutFigures(s Style) string {
	return "Contrast is how many times harder the custard is than the foam, how much sweeter the foam is than the custard, and how much warmer the custard starts to scoop. " +
		"Between: the least and most that unknown composition and the water bound to protein and fibre allow; for hardness also the thickness of the syrup and a factor of " +
		s.Number(phase.Scatter, 0) + " from batch to batch. Ice by volume leaves the air out. Overrun, density and volume are as filled, at " + s.Temperature(4) +
		". The trade aims for a sweetness of " + s.PercentSpan(phase.TradeSweetness[0], phase.TradeSweetness[1], 0) + " in an ice cream."
}

// What stands on the page of all figures.
const (
	AllFigures    = "All figures"
	HowComputed   = "How it is computed"
	HowHint       = "How these figures are computed: from what, by which equation, after whom, how sure."
	FigureMeans   = "What it is"
	FigureFrom    = "From"
	FigureBy      = "By"
	FigureAfter   = "After"
	FigureBand    = "How sure"
	WhyButton     = "Why…"
	WhyHint       = "All that there is to know of this design, each with the way to what causes it."
	ShowCause     = "Show"
	PhasesAndTub  = "The phases and the tub"
	WhatToKnow    = "What to know"
	WholeFood     = "Nutrition of the whole food"
	WhatItCosts   = "What the ingredients cost"
	GramMoreTitle = "What one gram more of a line does"
)

// AboutGramMore explains the table of what a gram more does.
const AboutGramMore = "What a gram more, as written, changes in its phase at the serving temperature. Hardness is in per cent of itself, sweetness in points. They are slopes: use them for small changes."

// Cost says what the ingredients of a batch cost, and which have no price.
func Cost(s Style, c *model.Cost) string {
	if !c.Priced {
		return "No ingredient has a price yet: give it one in the library, or in the line's menu on the bench."
	}
	s = s.In(c.Currency)
	text := s.Money(c.Known) + " for the batch"
	if known(c.PerTub) {
		text += ", " + s.Money(c.PerTub) + " a tub, " + s.Money(c.Per100G) + " for 100 g and " + s.Money(c.PerServing) + " a serving"
	}
	if s.Currency == "" {
		text += ", in your own money"
	}
	tap := ""
	if c.Tap {
		tap = " Water from the tap counts as nothing."
	}
	if len(c.Missing) == 0 {
		return "The ingredients cost " + text + "." + tap
	}
	text = "The ingredients cost at least " + text + "." + tap + " Without a price: " + List(kitchenNames(c.Missing)) + "."
	if len(c.Unweighed) > 0 {
		text += " How much the pack weighs is not known of " + List(kitchenNames(c.Unweighed)) + ": give its grams."
	}
	return text
}

// SellingStep names the step that undo takes back.
const SellingStep = "selling price"

// CostRests says what a cost leaves out.
const CostRests = "VAT, work, tubs and power are not in it."

func kitchenNames(of []*ingredient.Ingredient) []string {
	names := make([]string, len(of))
	for i, in := range of {
		names[i] = Kitchen(in)
	}
	return names
}

// FigureIs is a figure in one column of its table: "custard 3.2 %".
func FigureIs(head, value, unit string) string {
	return strings.TrimSpace(strings.TrimSpace(head+" "+value) + " " + unit)
}
