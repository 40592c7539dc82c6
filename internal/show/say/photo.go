package say

import (
	"ripplewright/internal/answer/photo"
	"ripplewright/internal/form/customary"
	"ripplewright/internal/matter/ripple"
)

// refusals say why a picture of a cut cannot be read, and what to do.
var refusals = map[photo.Reason]string{
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
	photo.OnePhase:       "the whole cut has one of the two colours: look at the outline and at the two spots",
}

// PhotoRefused says why a picture cannot be read.
func PhotoRefused(s Style, r *photo.Refusal) string {
	n := func(v float64) string { return s.Number(v, 0) }
	size := n(float64(r.Width)) + " by " + n(float64(r.Height)) + " pixels"
	switch r.Reason {
	case photo.TooLarge:
		return "the picture has " + size + ": more than 50 million are not read"
	case photo.TooSmall:
		return "the picture has " + size + ": too few for ribbons"
	case photo.OutlineOutside:
		return "the outline's place " + n(r.Place.X) + "," + n(r.Place.Y) + " lies outside the picture, which has " + size
	case photo.SpotOutside:
		return "the spot " + n(r.Place.X) + "," + n(r.Place.Y) + " lies outside the outline, or on its edge"
	case photo.Clipped:
		return s.Percent(r.ClippedPercent, 0) + " of the cut is burnt out to white: take the picture with less light, or aslant to it"
	case photo.Blurred:
		return "the picture is blurred: ribbons under " + s.Thickness(r.LeastMM) + " cannot be seen in it, and most are thinner"
	case photo.RibbonsThin:
		return "most ribbons are thinner than three of the picture's pixels, " + s.Thickness(r.LeastMM) + ": take it from nearer"
	}
	return refusals[r.Reason]
}

// What is said of a photograph of the cut.
const (
	PhotoOneCut  = "One cut is not the tub: its share of foam differs from cut to cut. The bands are from where the edge of the mask may lie."
	PhotoNoWidth = "No thickness is told: "

	PhotoRead     = "Read a photograph…"
	PhotoAsk      = "A photograph of the cut"
	PhotoOpening  = "Opening the picture…"
	PhotoReading  = "Reading the picture…"
	PhotoMeasure  = "Measure"
	PhotoNote     = "Note it in the batch"
	PhotoWide     = "Width of the cut"
	PhotoHigh     = "Its height"
	PhotoComputed = "The computed cut"
	PhotoHow      = "Drag the four corners to those of the cut, and a mark into a thick ribbon of each phase. The arrow keys move the mark that is chosen."
	PhotoHowRim   = "Drag four marks to the rim, a quarter turn apart, and a mark into a thick ribbon of each phase. The arrow keys move the mark that is chosen."
	PhotoFirst    = "Measure the picture first."
)

// PhotoHeads head the table of what a photograph shows.
var PhotoHeads = []string{"", "photograph", "band", "computed cut"}

// PhotoTable is that table: what is told beside the computed cut.
func PhotoTable(s Style, r *photo.Reading, computed *ripple.Measure) []TableRow {
	rows := []TableRow{{Name: "foam of the cut", Cells: []string{s.Percent(100*r.FoamFraction.Value, 1),
		s.PercentSpan(100*r.FoamFraction.Low, 100*r.FoamFraction.High, 1), s.Percent(100*computed.FoamFraction, 1)}}}
	if r.Thin != nil {
		return rows
	}
	mm := func(name string, seen photo.Edged, computedMM float64) {
		rows = append(rows, TableRow{Name: name, Cells: []string{s.Thickness(seen.Value), s.ThicknessSpan(seen.Low, seen.High), s.Thickness(computedMM)}})
	}
	mm("mean ribbon of foam", r.FoamMeanMM, computed.Foam.MeanMM)
	mm("thickest tenth of them", r.ThickestTenthMM, computed.Foam.ThickestTenthMM)
	mm("mean ribbon of custard", r.DenseMeanMM, computed.Dense.MeanMM)
	return rows
}

// PhotoTitle heads what a photograph shows.
func PhotoTitle(name, view, picture string) string {
	return name + ", " + view + " cut in " + picture
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
	text := "Ribbons under " + s.Thickness(leastMM) + " cannot be seen in this picture: they are left out of both."
	if known(wholeMM) {
		text += " With them the computed cut's mean is " + s.Thickness(wholeMM) + "."
	}
	return text
}

// PhotoKept says in which batch a photograph was written down.
func PhotoKept(batch, file string) string {
	return "Written down in batch " + batch + " of " + file + "."
}

// HandRibbon says what the mean ribbon of the computed cut comes to as this hand stirs.
func HandRibbon(s Style, cuts int, lowMM, valueMM, highMM float64) string {
	return "As you stir, by " + s.Count(cuts, "photographed cut", "photographed cuts") + ", the foam's mean ribbon is about " + s.Thickness(valueMM) +
		" (" + s.ThicknessSpan(lowMM, highMM) + " in 8 of 10 tubs)."
}

// PhotoMarks name the places that a maker marks, the first four of corners, or of a rim.
var PhotoMarks, PhotoRimMarks = []string{"upper left", "upper right", "lower right", "lower left", "custard", "foam"},
	[]string{"top", "right", "bottom", "left", "custard", "foam"}

// PhotoNoted says what of a photograph stands in the batch that is being noted; "" where
// nothing does.
func PhotoNoted(s Style, foamPercent, meanMM float64) string {
	switch {
	case !known(foamPercent):
		return ""
	case !known(meanMM):
		return "Read from a photograph: " + s.Percent(foamPercent, 1) + " foam."
	}
	return "Read from a photograph: " + s.Percent(foamPercent, 1) + " foam, mean ribbon " + s.Thickness(meanMM) + "."
}
