package say

import "ripplewright/internal/show/tongue"

// Message is a text of the catalogue, named by its English.
type Message = tongue.Message

// T is a message in the maker's language, with what it says filled in.
func T(m Message, args ...any) string { return tongue.T(m, args...) }
