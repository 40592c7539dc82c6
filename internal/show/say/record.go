package say

import "math"

// HigherSaccharides says what the longer sugars of a syrup are to the model:
// their mean weight, g/mol, and how sweet they are, sucrose being 1.
func HigherSaccharides(s Style, gPerMol, sweetness float64) string {
	return "Its longer sugars weigh " + s.Number(gPerMol, 0) + " g/mol on average and are " + s.Number(sweetness, 2) + " times as sweet as table sugar."
}

// PrintedPanel says how large a label's panel and its file are, width and height
// in mm.
func PrintedPanel(s Style, panel, file [2]float64) string {
	return "The panel is " + s.Size(panel[0], panel[1]) + " at true size, the file " + s.Size(file[0], file[1]) +
		": print it at " + s.Percent(100, 0) + ", not to fit the page."
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
