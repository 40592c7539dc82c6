package say

import "strings"

// What stands on the page of the card.
const (
	TheCard      Message = "The card"
	PanelOf      Message = "Nutrition panel of"
	Paper        Message = "Paper"
	WholePages   Message = "Whole pages"
	PageWidth    Message = "Page width"
	ExportPDF    Message = "Export PDF…"
	ExportPNG    Message = "Export PNG…"
	ExportSVG    Message = "Export SVG…"
	ExportText   Message = "Export text (Markdown)…"
	ExportPhone  Message = "Export HTML…"
	Parts        Message = "What stands on it"
	HowManyPages Message = "Pages"
	BigType      Message = "Big, for the kitchen"
	AboutPicture Message = "HTML is one page for a phone at the stove, with the recipe as data. The PNG has 150 dots to the inch, fewer for a long card. PNG and SVG have the pages one under the other."
	NoCard       Message = "No card can be drawn."
)

// CardPages says how many pages a card has, of what size in mm.
func CardPages(s Style, n int, widthMM, heightMM float64) string {
	return T("%s, %s. The file looks like what you see.", s.Count(n, "page", "pages"), s.Size(widthMM, heightMM))
}

// CardUntimed says why a card gives no times in the cold.
func CardUntimed(why string) string { return T("It gives no times in the cold: %s.", why) }

// CardSection is what a part of a card is called where it is chosen.
func CardSection(name string) string {
	if called, ok := map[string]string{"weights": T("Weights"), "steps": T("Steps"), "notes": T("Notes"), "day": T("Day by the clock"), "figures": T("Figures and verdict"),
		"plots": T("Plots"), "panel": T("Nutrition panel"), "cautions": T("Cautions"), "cost": T("Cost")}[name]; ok {
		return called
	}
	return name
}

// CardLimits are how many pages a card may have, by their number: 0, 1 or 2.
func CardLimits() []string { return []string{T("Any number"), T("One page"), T("Two pages")} }

// NotOnCard names the parts that had no room on the pages asked for.
func NotOnCard(names []string) string {
	called := make([]string, len(names))
	for i, n := range names {
		called[i] = CardSection(n)
	}
	return T("No room here for: %s.", Lower(strings.Join(called, ", ")))
}
