package say

import (
	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
)

// StepTitle is a step's few words: "Boil the syrup".
func StepTitle(code process.StepCode) string {
	for _, x := range stepWording {
		if x.code == code {
			return x.title.String()
		}
	}
	return string(code)
}

// Resource is what a thing of the kitchen is called.
func Resource(r process.Resource) string {
	words := map[process.Resource]string{process.Hands: T("cook's hands"), process.SyrupPan: T("syrup pan"), process.MixBowl: T("mixing bowl"),
		process.EggBowl: T("egg bowl"), process.WaterBath: T("ice bath")}
	if w := words[r]; w != "" {
		return w
	}
	return Of(string(r))
}

// Moved says which step gave way to which, and why.
func Moved(s Style, m plan.Move) string {
	return T("“%s” starts %s earlier, because “%s” needs the %s.", StepTitle(m.Task), s.Duration(m.Minutes), StepTitle(m.For), Resource(m.What))
}

// DayLine says how much work a day is: "1.6 h of work in all".
func DayLine(s Style, p *plan.Plan) string {
	return T("%s of work in all.", s.Duration(p.HandsOnMinutes()))
}
