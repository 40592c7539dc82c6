package say

import (
	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
)

// StepTitle is a step's few words: "Boil the syrup".
func StepTitle(code process.StepCode) string {
	for _, x := range stepWording {
		if x.code == code {
			return x.title
		}
	}
	return string(code)
}

// Resource is what a thing of the kitchen is called.
func Resource(r process.Resource) string {
	words := map[process.Resource]string{process.Hands: "cook's hands", process.SyrupPan: "syrup pan", process.MixBowl: "mixing bowl",
		process.EggBowl: "egg bowl", process.WaterBath: "ice bath"}
	if w := words[r]; w != "" {
		return w
	}
	return string(r)
}

// Moved says which step gave way to which, and why.
func Moved(s Style, m plan.Move) string {
	return "“" + StepTitle(m.Task) + "” starts " + s.Duration(m.Minutes) + " earlier, because “" + StepTitle(m.For) + "” needs the " + Resource(m.What) + "."
}

// DayLine says how much work a day is: "1.6 h of work in all".
func DayLine(s Style, p *plan.Plan) string {
	return s.Duration(p.HandsOnMinutes()) + " of work in all."
}
