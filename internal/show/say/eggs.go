package say

import (
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/egg"
)

// EggsLeft says which half eggs or more are over once the eggs are cracked and how
// long they keep by published advice, "" for none. It begins with a space.
func EggsLeft(s Style, e process.Eggs) string {
	days := s.span(s.Number(egg.KeepsDays[0], 0), s.Number(egg.KeepsDays[1], 0), "days")
	text := ""
	if e.YolksLeft >= 0.5 {
		text += " About " + s.Short(e.YolksLeft, 1) + " " + Plural(e.YolksLeft, "yolk", "yolks") + " (" + s.Mass(e.YolksLeftG) +
			") left over: they keep " + days + " in the refrigerator; do not freeze them plain."
	}
	if e.WhitesLeft >= 0.5 {
		text += " About " + s.Short(e.WhitesLeft, 1) + " " + Plural(e.WhitesLeft, "white", "whites") + " (" + s.Mass(e.WhitesLeftG) +
			") left over: they keep " + days + " in the refrigerator, " + s.Count(egg.FrozenMonths, "month", "") + " frozen."
	}
	return text
}
