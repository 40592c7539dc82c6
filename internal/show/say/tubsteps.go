package say

import (
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

func (w *stepWords) chillTubs() string {
	n := w.m.Design.Tubs.Count
	return T(either(float64(n), "Stand %s, its lid and the spoon in the freezer for half an hour at least: in a warm tub the first spoonfuls melt.",
		"Stand %s, the lids and the spoon in the freezer for half an hour at least: in a warm tub the first spoonfuls melt."), w.s.Count(n, "empty tub", "empty tubs"))
}

func (w *stepWords) swirl() string {
	dense, foam := w.m.Result.Dense.InTub(), w.m.Result.Foam.InTub()
	text := ""
	switch {
	case dense && foam:
		text = w.filled(w.m.Design.Blend.Layout) + " " + swirled(w.s, w.m.Design.Blend)
	case dense:
		text = T("Fill the tubs with the %s.", w.denseName())
	default:
		text = T("Fill the tubs with the foam.")
	}
	if in := w.things(anything); in != "" {
		text += " " + T("Sprinkle in %s as you fill.", in)
	}
	return text
}

// denseName is what the dense phase is called: a custard holds egg.
func (w *stepWords) denseName() string {
	if IsCustard(w.m.Result) {
		return T("custard")
	}
	return T("base")
}

// filled says how the phases go into the tub.
func (w *stepWords) filled(layout string) string {
	switch layout {
	case ripple.Layers.String():
		return T("Fill them in turn, in layers, denting each with the spoon.")
	case ripple.Halves.String():
		return T("Fill them side by side, one half each.")
	case ripple.Spiral.String():
		return T("Pipe the foam as a coil into the %s.", w.denseName())
	}
	return T("Set the foam into the %s in spoonfuls.", w.denseName())
}

// swirled says how to stir.
func swirled(s Style, b design.Blend) string {
	if b.Strokes == 0 {
		return T("Leave it as it is: no stroke.")
	}
	how := T("in turn plunge, drag, plunge and fold")
	switch b.Motion {
	case ripple.Plunge.String():
		how = T("each straight down and up")
	case ripple.Fold.String():
		how = T("each turning the bottom over the top")
	case ripple.FigureEight.String():
		how = T("each a figure of eight")
	case ripple.Drag.String():
		how = T("each a straight pull")
	}
	deep, strokes := T("down to the bottom"), s.Count(b.Strokes, "stroke", "strokes")
	if b.DepthPercent < 100 {
		deep = T("down to %s of the depth", s.Percent(b.DepthPercent, 0))
	}
	if b.HandleMM != design.Default().Blend.HandleMM {
		return T("With a spoon's handle %s wide %s, %s, %s. Then stop: more would blend them.", s.Length(b.HandleMM), deep, strokes, how)
	}
	return T("With a spoon's handle %s, %s, %s. Then stop: more would blend them.", deep, strokes, how)
}
