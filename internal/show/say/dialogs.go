package say

// The answers of dialogs, and their fields.
const (
	Cancel  = "Cancel"
	Close   = "Close"
	Done    = "Done"
	Replace = "Replace"
	UseIt   = "Use it"

	NewFolder = "Make a folder"
	NameField = "Name"
)

// ColourSliders name what a colour is mixed by.
var ColourSliders = [3]string{"Hue", "Strength", "Lightness"}
