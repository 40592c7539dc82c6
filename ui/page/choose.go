package page

import (
	"ripplewright/internal/desk/mishap"
	"ripplewright/ui/kit"
)

// SelectOf is a select among names. changed is told the place of what a hand
// chooses; show puts another on screen, nothing for one below 0, and calls nobody
// back.
func SelectOf(names []string, changed func(i int)) (s *kit.Select, show func(i int)) {
	s = kit.NewSelect(names, nil)
	s.OnChanged = mishap.With(func(string) { changed(s.SelectedIndex()) })
	return s, func(i int) {
		if i >= 0 {
			ShowSelected(s, names[i])
		}
	}
}
