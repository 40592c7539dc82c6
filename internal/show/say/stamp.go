package say

import (
	"strings"
	"time"

	"ripplewright/internal/show/tongue"
)

// stamp is a moment in a layout of package time, which the catalogue may lay out
// otherwise, with the days and months of the language.
func stamp(t time.Time, layout Message) string {
	text := t.Format(layout.String())
	if tongue.Language() == tongue.English {
		return text
	}
	return calendar(t).Replace(text)
}

// calendar puts the names of t's day and month in the maker's language.
func calendar(t time.Time) *strings.Replacer {
	day := [...]Message{"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"}[t.Weekday()]
	short := [...]Message{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}[t.Weekday()]
	month := [...]Message{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}[t.Month()-1]
	return strings.NewReplacer(string(day), day.String(), string(short), short.String(), string(month), month.String())
}
