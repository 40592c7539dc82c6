package say

import "math"

// HigherSaccharides says what the longer sugars of a syrup are to the model:
// their mean weight, g/mol, and how sweet they are, sucrose being 1.
func HigherSaccharides(s Style, gPerMol, sweetness float64) string {
	return T("Its longer sugars weigh %s g/mol on average and are %s times as sweet as table sugar.", s.Number(gPerMol, 0), s.Number(sweetness, 2))
}

// PrintedPanel says how large a label's panel and its file are, width and height
// in mm.
func PrintedPanel(s Style, panel, file [2]float64) string {
	return T("The panel is %s at true size, the file %s: print it at %s, not to fit the page.", s.Size(panel[0], panel[1]), s.Size(file[0], file[1]), s.Percent(100, 0))
}

// Measure is a number with a rule's own unit, to four figures: "7.721 %".
func (s Style) Measure(v float64, unit string) string {
	places := 4
	if v != 0 && known(v) {
		places = max(0, min(6, 3-int(math.Floor(math.Log10(math.Abs(v))))))
	}
	text := s.Short(v, places)
	if unit == "" {
		return text
	}
	return s.with(text, unit)
}
