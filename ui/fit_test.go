package ui

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/ui/theme"
)

// TestEveryPageFitsASmallScreen: a page that asks for more makes the window
// grow beyond the screen, and hides what stands at its edge.
func TestEveryPageFitsASmallScreen(t *testing.T) {
	b := newBed(t)
	b.App.Settings().SetTheme(theme.New(theme.Options{TextScale: 1.5})) // the largest of the menu
	const menu = 40                                                     // the menu bar's height, not part of the content
	for i := -1; i < len(b.pages); i++ {
		b.turnTo(i)
		name := "Bench"
		if i >= 0 {
			name = b.pages[i].Title()
		}
		size := b.win.Content().MinSize()
		assert.LessOrEqual(t, size.Width, float32(startWidth), name)
		assert.LessOrEqual(t, size.Height, float32(startHeight-menu), name)
	}
}
