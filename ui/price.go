package ui

import (
	"math"

	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
)

// price asks what a pack of line i's ingredient costs and holds.
func (l *lineList) price(i int) {
	_, x, ok := l.line(i)
	if !ok {
		return
	}
	cost, holds := kit.NewNumberField("", 0, design.MaxPrice, 2), kit.NewNumberField("g", 1, design.MaxGrams, 0)
	cost.ShowValue(x.Price.Or(math.NaN()))
	holds.ShowValue(1000)
	var dg *dialog.CustomDialog
	give := func(price ingredient.Cell) {
		dg.Hide()
		if d, now, ok := l.line(i); ok && shapeOf(now) == shapeOf(x) && now.Price != price {
			now.Price = price
			l.focus = i
			l.w.Commit(d.WithLine(l.part, i, now), "price of "+brief(l.w.nameOf(now)))
		}
	}
	use := func() {
		per := 1000 * cost.Value() / holds.Value()
		if !(per >= 0 && per <= design.MaxPrice) { // also catches what was left empty
			l.w.Say("A price needs what a pack costs and how many grams it holds.")
			return
		}
		give(ingredient.Known(per))
	}
	dg = kit.Ask(l.w.win, "Price of "+brief(l.w.nameOf(x)), widget.NewForm(
		widget.NewFormItem("A pack costs", cost), widget.NewFormItem("and holds", holds)),
		kit.Answer{Name: "Use it", Role: kit.ByReturn, Do: use},
		kit.Answer{Name: "No price", Role: kit.ByHand, Do: func() { give(ingredient.Cell{}) }},
		kit.Answer{Name: "Cancel", Role: kit.ByEscape})
	l.w.win.Canvas().Focus(cost.Focusable())
}
