package say

// The answers of dialogs, and their fields.
const (
	Cancel  Message = "Cancel"
	Close   Message = "Close"
	Done    Message = "Done"
	Replace Message = "Replace"
	UseIt   Message = "Use it"

	NewFolder Message = "Make a folder"
	NameField Message = "Name"
)

// ColourSliders name what a colour is mixed by.
func ColourSliders() []string { return []string{T("Hue"), T("Strength"), T("Lightness")} }
