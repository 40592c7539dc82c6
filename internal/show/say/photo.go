package say

import (
	"ripplewright/internal/answer/photo"
	"ripplewright/internal/form/customary"
	"ripplewright/internal/matter/ripple"
)

// refusals say why a picture of a cut cannot be read, and what to do.
var refusals = map[photo.Reason]Message{
	photo.NotAPicture:    "this is no picture that can be read: it has to be a JPEG or a PNG",
	photo.Broken:         "the picture is cut off or broken",
	photo.TooManyBytes:   "the file is larger than 64 MB",
	photo.OutlineCrossed: "the outline crosses itself or has a dent: give its corners in order round the cut, from the upper left",
	photo.OutlineSmall:   "a side of the outline has under 40 pixels: too few for ribbons; take the picture from nearer",
	photo.OutlineSlanted: "the cut is seen too much from the side to be straightened: take the picture from straight before it",
	photo.OutlineShape:   "the outline has not the proportions of the cut: mark the whole cut, and give its own width and height where the tub is not as the design has it",
	photo.TooDark:        "the cut is too dark: take the picture in more light",
	photo.ColoursAlike:   "custard and foam look alike where you marked them: mark a spot of each, in the middle of a thick ribbon",
	photo.Noisy:          "custard and foam differ by little more than the picture's grain: take the picture in more light",
	photo.Shadowed:       "a shadow, or a light that is not the same all over, lies on the cut and decides what looks like foam: take the picture in even light",
	photo.OnePhase:       "the whole cut has one of the two colours: look at the outline and at the two spots",
}

// PhotoRefused says why a picture cannot be read.
func PhotoRefused(s Style, r *photo.Refusal) string {
	n := func(v float64) string { return s.Number(v, 0) }
	size := T("%s by %s pixels", n(float64(r.Width)), n(float64(r.Height)))
	switch r.Reason {
	case photo.TooLarge:
		if r.MostPixels > 0 && r.MostPixels < photo.MaxPixels {
			return T("the picture has %s: of its kind %s million can be read; save it smaller, or as a plain JPEG, not a progressive one", size, n(float64(r.MostPixels/1e6)))
		}
		return T("the picture has %s: more than 50 million are not read", size)
	case photo.TooSmall:
		return T("the picture has %s: too few for ribbons", size)
	case photo.OutlineOutside:
		return T("the outline's place %s,%s lies outside the picture, which has %s", n(r.Place.X), n(r.Place.Y), size)
	case photo.SpotOutside:
		return T("the spot %s,%s lies outside the outline, or on its edge", n(r.Place.X), n(r.Place.Y))
	case photo.Clipped:
		return T("%s of the cut is burnt out to white: take the picture with less light, or aslant to it", s.Percent(r.ClippedPercent, 0))
	case photo.Blurred:
		return T("the picture is blurred: ribbons under %s cannot be seen in it, and most are thinner", s.Thickness(r.LeastMM))
	case photo.RibbonsThin:
		return T("most ribbons are thinner than three of the picture's pixels, %s: take it from nearer", s.Thickness(r.LeastMM))
	}
	return refusals[r.Reason].String()
}

// What is said of a photograph of the cut.
const (
	PhotoOneCut  Message = "One cut is not the tub: its share of foam differs from cut to cut. The bands are from where the edge of the mask may lie."
	PhotoNoWidth Message = "No thickness is told: %s."

	PhotoRead     Message = "Read a photograph…"
	PhotoAsk      Message = "A photograph of the cut"
	PhotoOpening  Message = "Opening the picture…"
	PhotoReading  Message = "Reading the picture…"
	PhotoMeasure  Message = "Measure"
	PhotoNote     Message = "Note it in the batch"
	PhotoWide     Message = "Width of the cut"
	PhotoHigh     Message = "Its height"
	PhotoComputed Message = "The computed cut"
	PhotoHow      Message = "Drag the four corners to those of the cut, and a mark into a thick ribbon of each phase. The arrow keys move the mark that is chosen; the wheel, + and − magnify."
	PhotoHowRim   Message = "Drag four marks to the rim, a quarter turn apart, and a mark into a thick ribbon of each phase. The arrow keys move the mark that is chosen; the wheel, + and − magnify."
	PhotoFirst    Message = "Measure the picture first."
)

// PhotoHeads head the table of what a photograph shows.
func PhotoHeads() []string { return []string{"", T("photograph"), T("band"), T("computed cut")} }

// PhotoTable is that table: what is told beside the computed cut.
func PhotoTable(s Style, r *photo.Reading, computed *ripple.Measure) []TableRow {
	rows := []TableRow{{Name: T("foam of the cut"), Cells: []string{s.Percent(100*r.FoamFraction.Value, 1),
		s.PercentSpan(100*r.FoamFraction.Low, 100*r.FoamFraction.High, 1), s.Percent(100*computed.FoamFraction, 1)}}}
	if r.Thin != nil {
		return rows
	}
	mm := func(name string, seen photo.Edged, computedMM float64) {
		rows = append(rows, TableRow{Name: name, Cells: []string{s.Thickness(seen.Value), s.ThicknessSpan(seen.Low, seen.High), s.Thickness(computedMM)}})
	}
	mm(T("mean ribbon of foam"), r.FoamMeanMM, computed.Foam.MeanMM)
	mm(T("thickest tenth of them"), r.ThickestTenthMM, computed.Foam.ThickestTenthMM)
	mm(T("mean ribbon of custard"), r.DenseMeanMM, computed.Dense.MeanMM)
	return rows
}

// PhotoTitle heads what a photograph shows.
func PhotoTitle(name, view, picture string) string {
	return T("%s, %s cut in %s", name, view, picture)
}

// ThicknessSpan is "3.1 to 3.4 mm".
func (s Style) ThicknessSpan(lowMM, highMM float64) string {
	if s.inches() {
		return s.span(s.Number(lowMM/customary.InchMM, 2), s.Number(highMM/customary.InchMM, 2), "in")
	}
	return s.span(s.TwoFigures(lowMM), s.TwoFigures(highMM), "mm")
}

// PhotoLeast says what a picture cannot show, and what the computed cut has with it.
func PhotoLeast(s Style, leastMM, wholeMM float64) string {
	text := T("Ribbons under %s cannot be seen in this picture: they are left out of both.", s.Thickness(leastMM))
	if known(wholeMM) {
		text += " " + T("With them the computed cut's mean is %s.", s.Thickness(wholeMM))
	}
	return text
}

// PhotoKept says in which batch a photograph was written down.
func PhotoKept(batch, file string) string {
	return T("Written down in batch %s of %s.", batch, file)
}

// HandRibbon says what the mean ribbon of the computed cut comes to as this hand stirs.
func HandRibbon(s Style, cuts int, lowMM, valueMM, highMM float64) string {
	return T("As you stir, by %s, the foam's mean ribbon is about %s (%s in 8 of 10 tubs).", s.Count(cuts, "photographed cut", "photographed cuts"), s.Thickness(valueMM), s.ThicknessSpan(lowMM, highMM))
}

// PhotoMarks name the places that a maker marks, the first four of corners, or of a rim.
func PhotoMarks() []string {
	return []string{T("upper left"), T("upper right"), T("lower right"), T("lower left"), T("custard"), T("foam")}
}

// PhotoRimMarks are PhotoMarks on a rim.
func PhotoRimMarks() []string {
	return []string{T("top"), T("right"), T("bottom"), T("left"), T("custard"), T("foam")}
}

// PhotoNoted says what of a photograph stands in the batch that is being noted; "" where
// nothing does.
func PhotoNoted(s Style, foamPercent, meanMM float64) string {
	switch {
	case !known(foamPercent):
		return ""
	case !known(meanMM):
		return T("Read from a photograph: %s foam.", s.Percent(foamPercent, 1))
	}
	return T("Read from a photograph: %s foam, mean ribbon %s.", s.Percent(foamPercent, 1), s.Thickness(meanMM))
}
