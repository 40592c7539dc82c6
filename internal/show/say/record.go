package say

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
