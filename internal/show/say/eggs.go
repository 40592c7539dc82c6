package say

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/egg"
)

// EggLedger says what is to be cracked, what each phase uses of it and what is
// over.
func EggLedger(s Style, e process.Eggs) string {
	if e.Crack == 0 {
		return T("There are no eggs to crack.")
	}
	parts := func(p model.EggParts) string {
		var list []string
		if p.Yolks > 0 {
			list = append(list, s.few(p.Yolks, "yolk", "yolks"))
		}
		if p.Whites > 0 {
			list = append(list, s.few(p.Whites, "white", "whites"))
		}
		return List(list)
	}
	eggs, size, dense, foam := s.Count(e.Crack, "egg", "eggs"), Of(e.Size), parts(e.Dense), parts(e.Foam)
	text := T("Crack %s (%s %s): the custard uses %s and the foam %s.", eggs, e.System, size, dense, foam)
	switch {
	case foam == "":
		text = T("Crack %s (%s %s): the custard uses %s.", eggs, e.System, size, dense)
	case dense == "":
		text = T("Crack %s (%s %s): the foam uses %s.", eggs, e.System, size, foam)
	}
	return text + EggsLeft(s, e)
}

// eggs counts eggs or their parts, in whole ones from twenty on.
func (s Style) eggs(n float64) string {
	if n >= 20 {
		return s.Number(n, 0)
	}
	return s.Short(n, 1)
}

// EggsLeft says which half eggs or more are over once the eggs are cracked and how
// long they keep by published advice, "" for none. It begins with a space.
func EggsLeft(s Style, e process.Eggs) string {
	days := s.span(s.Number(egg.KeepsDays[0], 0), s.Number(egg.KeepsDays[1], 0), T("days"))
	text := ""
	if e.YolksLeft >= 0.5 {
		text += " " + T("About %s %s (%s) left over: they keep %s in the refrigerator; do not freeze them plain.", s.eggs(e.YolksLeft), Plural(math.Round(10*e.YolksLeft)/10, "yolk", "yolks"), s.MassWithin(e.YolksLeftG), days)
	}
	if e.WhitesLeft >= 0.5 {
		text += " " + T("About %s %s (%s) left over: they keep %s in the refrigerator, %s frozen.", s.eggs(e.WhitesLeft), Plural(math.Round(10*e.WhitesLeft)/10, "white", "whites"), s.MassWithin(e.WhitesLeftG), days, s.Count(egg.FrozenMonths, "month", "months"))
	}
	return text
}
