package say

// What stands on the page of the card.
const (
	CardPage     = "Card"
	TheCard      = "The card"
	PanelOf      = "Nutrition panel of"
	Paper        = "Paper"
	WholePages   = "Whole pages"
	PageWidth    = "Page width"
	ExportPDF    = "Export PDF…"
	ExportPNG    = "Export PNG…"
	ExportSVG    = "Export SVG…"
	ExportText   = "Export text (Markdown)…"
	AboutPicture = "The PNG has 150 dots to the inch, fewer for a long card. PNG and SVG have the pages one under the other."
	NoCard       = "No card can be drawn."
)

// CardPages says how many pages a card has, of what size in mm.
func CardPages(s Style, n int, widthMM, heightMM float64) string {
	return s.Count(n, "page", "") + ", " + s.Size(widthMM, heightMM) + ". The file looks like what you see."
}

// CardUntimed says why a card gives no times in the cold.
func CardUntimed(why string) string { return "It gives no times in the cold: " + why + "." }
