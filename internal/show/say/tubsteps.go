package say

import (
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

func (w *stepWords) chillTubs() string {
	n := w.m.Design.Tubs.Count
	return "Stand " + w.s.Count(n, "empty tub", "") + Plural(float64(n), ", its lid", ", the lids") + " and the spoon in the freezer for half an hour at least: in a warm tub the first spoonfuls melt."
}

func (w *stepWords) swirl() string {
	dense, foam := w.m.Result.Dense.InTub(), w.m.Result.Foam.InTub()
	text := ""
	switch {
	case dense && foam:
		text = w.filled(w.m.Design.Blend.Layout) + " " + swirled(w.s, w.m.Design.Blend)
	case dense:
		text = "Fill the tubs with the " + w.denseName() + "."
	default:
		text = "Fill the tubs with the foam."
	}
	if in := w.things(anything); in != "" {
		text += " Sprinkle in " + in + " as you fill."
	}
	return text
}

// denseName is what the dense phase is called: a custard holds egg.
func (w *stepWords) denseName() string {
	if IsCustard(w.m.Result) {
		return "custard"
	}
	return "base"
}

// filled says how the phases go into the tub.
func (w *stepWords) filled(layout string) string {
	switch layout {
	case ripple.Layers.String():
		return "Fill them in turn, in layers, denting each with the spoon."
	case ripple.Halves.String():
		return "Fill them side by side, one half each."
	case ripple.Spiral.String():
		return "Pipe the foam as a coil into the " + w.denseName() + "."
	}
	return "Set the foam into the " + w.denseName() + " in spoonfuls."
}

// swirled says how to stir.
func swirled(s Style, b design.Blend) string {
	if b.Strokes == 0 {
		return "Leave it as it is: no stroke."
	}
	how := "in turn plunge, drag, plunge and fold"
	switch b.Motion {
	case ripple.Plunge.String():
		how = "each straight down and up"
	case ripple.Fold.String():
		how = "each turning the bottom over the top"
	case ripple.FigureEight.String():
		how = "each a figure of eight"
	case ripple.Drag.String():
		how = "each a straight pull"
	}
	wide, deep := "", "down to the bottom"
	if b.HandleMM != design.Default().Blend.HandleMM {
		wide = " " + s.Length(b.HandleMM) + " wide"
	}
	if b.DepthPercent < 100 {
		deep = "down to " + s.Percent(b.DepthPercent, 0) + " of the depth"
	}
	return "With a spoon's handle" + wide + " " + deep + ", " + s.Count(b.Strokes, "stroke", "") + ", " + how + ". Then stop: more would blend them."
}
