package ui

import (
	"strings"

	"ripplewright/internal/atomicfile"
	"ripplewright/internal/label"
	"ripplewright/internal/report"
)

// writeLabel writes the label's text to path.
func (w *Window) writeLabel(path string, region label.Region) {
	d := w.Design()
	l, err := label.For(w.Result().Food(d), region, label.Options{})
	if err != nil {
		w.problem(err)
		return
	}
	var text strings.Builder
	if err := (report.Label{Label: l}).WriteText(&text); err != nil {
		w.problem(err)
		return
	}
	if err := atomicfile.Write(path, []byte(text.String())); err != nil {
		w.problem(err)
		return
	}
	w.Say("Wrote " + path)
	w.event("exported %s", path)
}
