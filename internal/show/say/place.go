package say

// What a maker is doing, as the pages are grouped by it.
const (
	ToThink Message = "Think"
	ToMake  Message = "Make"
	ToSell  Message = "Sell"
	ToLearn Message = "Learn"
)

// The pages, as their row, the menus and the help name them.
const (
	BenchPage   Message = "Bench"
	AskPage     Message = "Ask"
	RipplePage  Message = "Ripple"
	StepsPage   Message = "Steps"
	DayPage     Message = "The day"
	ColdPage    Message = "The cold"
	ShopPage    Message = "Shopping"
	LabelPage   Message = "Label"
	CardPage    Message = "Card"
	CostPage    Message = "Cost"
	BatchPage   Message = "Notebook"
	LibraryPage Message = "Library"
	SurePage    Message = "How sure?"
)

// What leads through the pages.
const (
	GoMenu         Message = "Go"
	NextPage       Message = "Next page"
	PageBefore     Message = "Page before"
	AllFiguresHint Message = "All figures, the cautions, and what a gram more does. Ctrl+I."
	TheEggs        Message = "The eggs"
	BackToBench    Message = "Back to the bench"
)
