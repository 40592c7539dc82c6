package kit

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Know asks the toolkit of which window the objects in c are that can be seen. It forgets
// those that nobody asked about for a minute, and a field that is pressed then may kill it.
// What is within a widget of the toolkit is out of reach.
func Know(c fyne.Canvas) {
	d := fyne.CurrentApp().Driver()
	for _, o := range slices.Concat(c.Overlays().List(), []fyne.CanvasObject{c.Content()}) { // the list is the toolkit's own
		everyOne(o, func(o fyne.CanvasObject) { d.CanvasForObject(o) })
	}
}

// everyOne is within that looks into divided rooms too.
func everyOne(o fyne.CanvasObject, see func(fyne.CanvasObject)) {
	within(o, func(o fyne.CanvasObject) {
		see(o)
		if s, ok := o.(*container.Split); ok {
			everyOne(s.Leading, see)
			everyOne(s.Trailing, see)
		}
	})
}
