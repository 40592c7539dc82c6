package kit

import (
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
)

// What does not fit below an answer is written a little smaller, both lines alike, and never
// as small as its last line alone would ask.
func TestATilesFootIsWrittenNoSmallerThanItNeeds(t *testing.T) {
	test.NewTempWindow(t, widget.NewLabel(""))
	for _, c := range []struct {
		foot  string
		least float64
	}{
		{"the tub scoops", 12},
		{"Schaum zieht es; Eis vergröbert so schnell wie bei −18 °C", 10},
		{"bis zum Einziehen; 2,9 h nach der Creme hineinstellen", 10},
		{"Donaudampfschifffahrtsgesellschaftskapitän", 5},
	} {
		small, lines := fitted(c.foot, 155, 12)
		assert.LessOrEqual(t, len(lines), tileFoot, c.foot)
		assert.GreaterOrEqual(t, small, c.least, c.foot)
		for _, line := range lines {
			assert.LessOrEqual(t, measure(line, small), 155., line)
		}
	}
}
