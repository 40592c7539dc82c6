package say

import "strings"

// Files of the maker's own, as PutAside calls them.
const (
	OwnFoods    = "own ingredients"
	OwnPrices   = "prices"
	OwnKitchens = "kitchens"
)

// PutAside says that a file of the maker's own could not be read, and where it is now.
func PutAside(what string, why error, now string) string {
	return "Your " + what + " cannot be read (" + HarmlessLine(strings.TrimSuffix(why.Error(), ".")) + "). The program goes on without them, and new ones are kept in a new file. " +
		"The old file is kept as " + HarmlessLine(now) + "."
}
