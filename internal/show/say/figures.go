package say

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
)

// AboutFigures explains the table of all figures.
func AboutFigures(s Style) string {
	return T("Contrast is how many times harder the custard is than the foam, how much sweeter the foam is than the custard, and how much warmer the custard starts to scoop. Between: the least and most that unknown composition and the water bound to protein and fibre allow; for hardness also the thickness of the syrup and a factor of %s from batch to batch. Ice by volume leaves the air out. Overrun, density and volume are as filled, at %s. The trade aims for a sweetness of %s in an ice cream.", s.Number(phase.Scatter, 0), s.Temperature(4), s.PercentSpan(phase.TradeSweetness[0], phase.TradeSweetness[1], 0))
}

// What stands on the page of all figures.
const (
	AllFigures    Message = "All figures"
	HowComputed   Message = "How it is computed"
	HowHint       Message = "How these figures are computed: from what, by which equation, after whom, how sure."
	FigureMeans   Message = "What it is"
	FigureFrom    Message = "From"
	FigureBy      Message = "By"
	FigureAfter   Message = "After"
	FigureBand    Message = "How sure"
	WhyButton     Message = "Why…"
	WhyHint       Message = "All that there is to know of this design, each with the way to what causes it."
	ShowCause     Message = "Show"
	PhasesAndTub  Message = "The phases and the tub"
	WhatToKnow    Message = "What to know"
	WholeFood     Message = "Nutrition of the whole food"
	WhatItCosts   Message = "What the ingredients cost"
	GramMoreTitle Message = "What one gram more of a line does"
)

// AboutGramMore explains the table of what a gram more does.
const AboutGramMore Message = "What a gram more, as written, changes in its phase at the serving temperature. Hardness is in per cent of itself, sweetness in points. They are slopes: use them for small changes."

// Cost says what the ingredients of a batch cost, and which have no price.
func Cost(s Style, c *model.Cost) string {
	if !c.Priced {
		return T("No ingredient has a price yet: give it one in the library, or in the line's menu on the bench.")
	}
	s = s.In(c.Currency)
	sums := T("%s for the batch", s.Money(c.Known))
	if known(c.PerTub) {
		sums = T("%s for the batch, %s a tub, %s for 100 g and %s a serving", s.Money(c.Known), s.Money(c.PerTub), s.Money(c.Per100G), s.Money(c.PerServing))
	}
	if s.Currency == "" {
		sums = T("%s, in your own money", sums)
	}
	text := T("The ingredients cost %s.", sums)
	if len(c.Missing) > 0 {
		text = T("The ingredients cost at least %s.", sums)
	}
	if c.Tap {
		text += " " + T("Water from the tap counts as nothing.")
	}
	if len(c.Missing) > 0 {
		text += " " + T("Without a price: %s.", List(kitchenNames(c.Missing)))
	}
	if len(c.Unweighed) > 0 {
		text += " " + T("How much the pack weighs is not known of %s: give its grams.", List(kitchenNames(c.Unweighed)))
	}
	return text
}

// SellingStep names the step that undo takes back.
const SellingStep Message = "selling price"

// CostRests says what a cost leaves out.
const CostRests Message = "VAT, work, tubs and power are not in it."

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
