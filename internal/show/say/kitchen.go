package say

import (
	"strconv"
	"time"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/ingredient"
)

// Quantity is what of one thing goes in: "85 g", "egg yolks (5)", and beside it
// in measures of the household, "" where none is known.
type Quantity struct{ Amount, Name, Measure string }

// Quantities lists what goes in at a step, a thing once.
func Quantities(s Style, m Making, step *process.Step) []Quantity {
	w := &stepWords{s, m, step}
	var things []*ingredient.Ingredient
	grams := map[string]float64{}
	for _, u := range step.Lines {
		in := w.line(u).Ingredient
		if _, ok := grams[in.ID]; !ok {
			things = append(things, in)
		}
		grams[in.ID] += u.Grams
	}
	out := make([]Quantity, len(things))
	for i, in := range things {
		name := Kitchen(in)
		if n := w.pieces(in, grams[in.ID]); n != "" {
			name += " (" + n + ")"
		}
		out[i] = Quantity{s.Mass(grams[in.ID]), name, w.measure(in, grams[in.ID])}
	}
	return out
}

// MeasureOf is what goes in of a line in measures of the household.
func MeasureOf(s Style, m Making, u process.Used) string {
	w := &stepWords{s, m, nil}
	return w.measure(w.line(u).Ingredient, u.Grams)
}

// measure is a weight in measures of the household; "" of eggs, which are
// counted.
func (w *stepWords) measure(in *ingredient.Ingredient, g float64) string {
	if w.pieces(in, g) != "" {
		return ""
	}
	return Household(w.s, in, g)
}

// StepPlace says where one is: "Step 3 of 17".
func StepPlace(i, n int) string { return T("Step %s of %s", strconv.Itoa(i+1), strconv.Itoa(n)) }

// Timer is a time as a kitchen timer shows it, to the second: "12:30",
// "4:00:00". What is over counts up, with a plus: "+0:12".
func Timer(left time.Duration) string {
	sign := ""
	if left < 0 {
		sign, left = "+", -left
	} else {
		left += time.Second - 1 // 0:00 comes when the time is up, not before
	}
	n := int(left / time.Second)
	if h := n / 3600; h > 0 {
		return T("%s%d:%02d:%02d", sign, h, n/60%60, n%60)
	}
	return T("%s%d:%02d", sign, n/60, n%60)
}

// TimeUp says that a step's time has come.
func TimeUp(title string) string { return T("“%s”: the time is up.", title) }

// TimerOf names a timer and what it shows: "Rest 3:41:00", "Cook 6:00, paused".
func TimerOf(title string, left time.Duration, paused bool) string {
	text := title + " " + Timer(left)
	switch {
	case paused:
		return T("%s, paused", text)
	case left <= 0:
		return T("%s, time is up", text)
	}
	return text
}

// Became says what a figure has come to: "Syrup solids 90.9 %, was 88.2 %".
func Became(name, before, after string) string { return T("%s %s, was %s", name, after, before) }

// ReadsOtherwise says which steps a reading changes.
func ReadsOtherwise(codes []process.StepCode) string {
	if len(codes) == 0 {
		return T("No step reads otherwise.")
	}
	titles := make([]string, len(codes))
	for i, c := range codes {
		titles[i] = T("“%s”", StepTitle(c))
	}
	return T("Changed: %s.", List(titles))
}
