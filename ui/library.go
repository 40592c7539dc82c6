package ui

import (
	"time"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/librarypage"
	"ripplewright/ui/packprice"
	"ripplewright/ui/page"
)

// newLibrary returns the library page.
func (w *Window) newLibrary() page.Page {
	return librarypage.New(w, librarypage.Setup{Shelf: w.Shelf, Use: w.useLibrary, Prices: w.Prices,
		Price:   func(in *ingredient.Ingredient) { packprice.Ask(w, w.pricing(), in) },
		Sources: w.Sources, ShowSources: w.showSources})
}

// useLibrary makes lib what the session works with from now on.
func (w *Window) useLibrary(lib *ingredient.Library) {
	w.Session.Use(model.New(lib).Priced(w.Prices.Book()).Taught(w.Session.Model().Lessons()))
	w.event("library %d", len(lib.All()))
}

func (w *Window) showSources() { w.text(say.T("Sources"), w.Sources) }

// putAside puts the files of the maker's own aside that are broken: each is said once, at
// this start, and the program goes on with new ones.
func (w *Window) putAside() {
	for _, own := range [...]struct {
		what  string
		aside func(time.Time) (*userdata.PutAside, error)
	}{{say.OwnFoods.String(), w.Shelf.PutAside}, {say.OwnPrices.String(), w.Prices.PutAside}, {say.OwnKitchens.String(), w.kitchens.PutAside}} {
		kept, err := own.aside(time.Now())
		switch {
		case err != nil: // it stays where it is, and the start tells of that
			w.event("not aside %v", err)
		case kept != nil:
			w.event("aside %s", kept.Path)
			w.Notices = append(w.Notices, say.PutAside(own.what, kept.Why, kept.Path))
		}
	}
}

// tellShelf says at the start that the maker's own ingredients were left out.
func (w *Window) tellShelf() {
	if err := w.Shelf.Err(); err != nil {
		w.problem(flaw.New(flaw.Message(say.OwnFoodsOut), err))
	}
}

// usePrices makes the maker's prices what the session works with from now on.
func (w *Window) usePrices() {
	w.Session.Use(w.Session.Model().Priced(w.Prices.Book()))
	w.event("prices %d", len(w.Prices.Book().Packs()))
}

// pricing is what the question of a price needs.
func (w *Window) pricing() packprice.Setup {
	return packprice.Setup{Prices: w.Prices, Use: w.usePrices}
}

// tellPrices says at the start that the maker's prices were left out.
func (w *Window) tellPrices() {
	if err := w.Prices.Err(); err != nil {
		w.problem(flaw.New(flaw.Message(say.OwnPricesOut), err))
	}
}

// tellKitchens says at the start that the maker's own kitchens were left out.
func (w *Window) tellKitchens() {
	if err := w.kitchens.Problem(); err != nil {
		w.problem(flaw.New(flaw.Message(say.OwnKitchensOut), err))
	}
}
