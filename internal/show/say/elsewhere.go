package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
)

// Elsewhere lists what a proposal costs or brings beside the verdict, against what
// there was, and what then reads otherwise on the label: "the tub 2.1 points less
// sweet", "a US serving declares 210 kcal, not 230 kcal". Beside sweetness it is what
// balance.Compare has found.
func Elsewhere(s Style, was *model.Result, p *balance.Proposal) []string {
	var out []string
	is := &p.Result
	if by := is.Blend.SweetnessPercent - was.Blend.SweetnessPercent; math.Abs(by) >= 0.1 {
		word := T("sweeter")
		if by < 0 {
			word = T("less sweet")
		}
		out = append(out, T("the tub %s %s", strings.TrimLeft(s.Points(math.Abs(by), 1), "+"), word))
	}
	b := p.Beside
	if b == nil {
		return out
	}
	for _, code := range b.CautionsGained {
		out = append(out, T("it brings %s", CautionName(code)))
	}
	if now, then := s.Short(b.Contrast.Before, 1), s.Short(b.Contrast.After, 1); known(b.Contrast.Before) && known(b.Contrast.After) && now != then {
		out = append(out, T("the custard %s times as hard as the foam, not %s", then, now))
	}
	if now, then := s.Number(b.Minutes.Before, 0), s.Number(b.Minutes.After, 0); known(b.Minutes.Before) && known(b.Minutes.After) && now != then {
		out = append(out, T("%s out of the freezer, not %s", s.with(then, "min"), now))
	}
	switch by := b.CostPerTub.After - b.CostPerTub.Before; {
	case by >= 0.005:
		out = append(out, T("%s dearer a tub", s.Money(by)))
	case by <= -0.005:
		out = append(out, T("%s cheaper a tub", s.Money(-by)))
	}
	return append(out, onTheLabel(b)...)
}

// onTheLabel lists what then reads otherwise on a label.
func onTheLabel(b *balance.Beside) []string {
	var out []string
	if lines := declares(b.Declared); lines != "" {
		out = append(out, T("a US serving declares %s", lines))
	}
	if lines := declares(b.DeclaredEU); lines != "" {
		out = append(out, T("an EU label declares of 100 g %s", lines))
	}
	out = append(out, inLimits(T("then within"), b.NamesGained)...)
	out = append(out, inLimits(T("no longer within"), b.NamesLost)...)
	if len(b.AllergensGained) > 0 {
		out = append(out, T("the label then names %s as an allergen", List(allergenWords(b.AllergensGained))))
	}
	if len(b.AllergensLost) > 0 {
		out = append(out, T("the label names %s no more", List(allergenWords(b.AllergensLost))))
	}
	return out
}

// declares lists the lines of a panel that then read otherwise, "" for none.
func declares(lines []balance.Declared) string {
	var out []string
	for i := range lines {
		d := &lines[i]
		if !d.Changed() {
			continue
		}
		was, is := d.Before.Marked(d.Before.AmountText()), d.After.Marked(d.After.AmountText())
		switch d.Key {
		case "calories":
			out = append(out, T("%s kcal, not %s kcal", is, was))
		case "energy_kcal":
			out = append(out, T("%s, not %s", is, was))
		default:
			out = append(out, T("%s %s, not %s", is, Of(strings.TrimPrefix(strings.ToLower(d.Name), "of which ")), was))
		}
	}
	return strings.Join(out, "; ")
}

// inLimits says of the whole food and of the custard alone that it is within the limits
// of names of food, or is no longer.
func inLimits(is string, names []label.Name) (out []string) {
	var foods []string
	of := map[string][]string{}
	for _, n := range names {
		if of[n.Of] == nil {
			foods = append(foods, n.Of)
		}
		name := Of(n.Name)
		if n.Region == label.US {
			name = T("%s (US)", name)
		}
		of[n.Of] = append(of[n.Of], name)
	}
	for _, f := range foods {
		out = append(out, T("the %s is %s the limits of %s", LabelledFood(f), is, List(of[f])))
	}
	return out
}

// allergenWords are the words of codes, each once: two regions may tell one food.
func allergenWords(codes []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, w := range Allergens(codes) {
		if !seen[w] {
			seen[w] = true
			out = append(out, w)
		}
	}
	return out
}
