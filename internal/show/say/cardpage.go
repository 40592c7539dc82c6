package say

import "strings"

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
	ExportPhone  = "Export HTML…"
	Parts        = "What stands on it"
	HowManyPages = "Pages"
	BigType      = "Big, for the kitchen"
	AboutPicture = "HTML is one page for a phone at the stove, with the recipe as data. The PNG has 150 dots to the inch, fewer for a long card. PNG and SVG have the pages one under the other."
	NoCard       = "No card can be drawn."
)

// CardPages says how many pages a card has, of what size in mm.
func CardPages(s Style, n int, widthMM, heightMM float64) string {
	return s.Count(n, "page", "") + ", " + s.Size(widthMM, heightMM) + ". The file looks like what you see."
}

// CardUntimed says why a card gives no times in the cold.
func CardUntimed(why string) string { return "It gives no times in the cold: " + why + "." }

// CardSection is what a part of a card is called where it is chosen.
func CardSection(name string) string {
	if called, ok := map[string]string{"weights": "Weights", "steps": "Steps", "notes": "Notes", "day": "Day by the clock", "figures": "Figures and verdict",
		"plots": "Plots", "panel": "Nutrition panel", "cautions": "Cautions", "cost": "Cost"}[name]; ok {
		return called
	}
	return name
}

// CardLimits are how many pages a card may have, by their number: 0, 1 or 2.
var CardLimits = [...]string{"Any number", "One page", "Two pages"}

// NotOnCard names the parts that had no room on the pages asked for.
func NotOnCard(names []string) string {
	called := make([]string, len(names))
	for i, n := range names {
		called[i] = CardSection(n)
	}
	return "No room here for: " + strings.ToLower(strings.Join(called, ", ")) + "."
}
