package ui

import (
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/compare"
	"ripplewright/internal/work/design"
	"ripplewright/ui/page"
)

// recordActs makes changes of kitchens and of own ingredients steps of undo.
func (w *Window) recordActs() {
	w.kitchens.Watch(func(c kitchens.Change) {
		w.Session.Did(say.KitchenStep(page.Reads, c.Before, c.After), w.act(
			func() error { return w.kitchens.Make(c.Reversed()) },
			func() error { return w.kitchens.Make(c) }))
	})
	w.Shelf.Watch(func(before, after *ingredient.Ingredient) {
		turn := func(from, to *ingredient.Ingredient) func() error {
			return func() error {
				if err := w.Shelf.Turn(from, to); err != nil {
					return err
				}
				w.useLibrary(w.Shelf.Library())
				return nil
			}
		}
		w.Session.Did(say.FoodStep(before, after), w.act(turn(after, before), turn(before, after)))
	})
}

// act says what goes wrong when something is taken back or done again.
func (w *Window) act(back, again func() error) session.Act {
	told := func(do func() error) func() bool {
		return func() bool {
			if err := do(); err != nil {
				w.problem(err)
				return false
			}
			return true
		}
	}
	return session.Act{Back: told(back), Again: told(again)}
}

// stepText is a step's name in the menu, with what it changed.
func stepText(name string, change func() (before, after design.Design)) string {
	if name == "" {
		return ""
	}
	return say.StepText(page.Reads, name, compare.Between(change()))
}
