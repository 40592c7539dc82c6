package say

import "strings"

// Files of the maker's own, as PutAside calls them.
const (
	OwnFoods    Message = "own ingredients"
	OwnPrices   Message = "prices"
	OwnKitchens Message = "kitchens"
)

// PutAside says that a file of the maker's own could not be read, and where it is now.
func PutAside(what string, why error, now string) string {
	return T("Your %s cannot be read (%s). The program goes on without them, and new ones are kept in a new file. The old file is kept as %s.", what, HarmlessLine(strings.TrimSuffix(Flaw(why), ".")), HarmlessLine(now))
}
