package ui

import "ripplewright/ui/packprice"

// price asks what a pack of line i's ingredient costs and holds.
func (l *lineList) price(i int) {
	_, x, ok := l.line(i)
	if !ok {
		return
	}
	lib := l.w.Model().Library().With(l.w.Design().Own)
	if in, ok := lib.Find(x.Ingredient); ok {
		packprice.Ask(l.w, l.w.pricing(), in)
	}
}
