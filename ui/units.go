package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/places"
	"ripplewright/internal/desk/preferences"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// prefUnits begins the keys of how the maker reads quantities.
const prefUnits = "units."

func unitPreferences() map[string]preferences.Kind {
	kinds := map[string]preferences.Kind{prefLanguage: preferences.Text}
	for _, c := range say.UnitChoices() {
		kinds[prefUnits+c.Key] = preferences.Text
	}
	return kinds
}

// restoreUnits reads how the maker reads quantities.
func (w *Window) restoreUnits() {
	s := say.Usual
	s.Comma = say.WithComma()
	for _, c := range say.UnitChoices() {
		s = c.In(s, w.App.Preferences().String(prefUnits+c.Key))
	}
	page.Reads = s.In(w.Prices.Book().Currency)
}

// useUnits shows everything as s has it, and keeps that.
func (w *Window) useUnits(s say.Style) {
	for _, c := range say.UnitChoices() {
		w.App.Preferences().SetString(prefUnits+c.Key, c.Of(s))
	}
	page.Reads = s.In(w.Prices.Book().Currency)
	w.rebuild()
	w.Say(say.UnitsKept.String())
	w.event("units %s", say.UnitChoices()[0].Of(s))
}

// askUnits asks how quantities are to be read.
func (w *Window) askUnits() {
	s := page.Reads
	form := widget.NewForm()
	language := tongue.Language()
	var shows []func()
	for _, c := range say.UnitChoices() {
		pick, show := page.SelectOf(say.NamesOf(c.Choices), func(i int) { s = c.In(s, c.Choices[i].Value) })
		shows = append(shows, func() {
			now := c.Of(s)
			show(slices.IndexFunc(c.Choices, func(x say.Choice) bool { return x.Value == now }))
		})
		form.Append(c.Name, pick)
	}
	show := func() {
		for _, f := range shows {
			f()
		}
	}
	show()
	askLanguage(form, func(tag string) {
		if tag != language {
			language, s.Comma = tag, tag != tongue.English
			show()
		}
	})
	currency := kit.NewTextField()
	currency.SetText(w.Prices.Book().Currency)
	form.Append(say.T("Currency"), currency)
	all := func(name string, of say.Style) fyne.CanvasObject {
		return kit.NewButton(name, func() {
			of.Comma = s.Comma
			s = of
			show()
		})
	}
	wrong := page.Prose("")
	wrong.Importance = widget.DangerImportance
	var dg *dialog.CustomDialog
	done := func() {
		if text := w.useCurrency(currency.Text); text != "" {
			wrong.SetText(text)
			return
		}
		dg.Hide()
		if language != tongue.Language() && speak(language) {
			w.App.Preferences().SetString(prefLanguage, language)
		}
		w.useUnits(s)
	}
	dg = kit.Ask(w.win, say.UnitsTitle.String(), container.NewVBox(page.Prose(say.UnitsAbout.String()),
		container.NewHBox(all(say.AllMetric.String(), say.Usual), all(say.AllUS.String(), say.Customary)), form, wrong),
		kit.Answer{Name: say.T("Use them"), Role: kit.ByReturn, Do: done}, kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape})
	dg.Resize(fyne.NewSize(max(480, 34*theme.TextSize()), 0))
}

// useCurrency makes text the currency of the maker's prices, or says what is
// wrong with it.
func (w *Window) useCurrency(text string) (wrong string) {
	if text == w.Prices.Book().Currency {
		return ""
	}
	if err := w.Prices.SetCurrency(text); err != nil {
		return say.Sentence(say.Flaw(err))
	}
	w.Session.Use(w.Session.Model().Priced(w.Prices.Book()))
	return ""
}

// A reader is a page that stays as it is when the maker reads quantities
// otherwise, since something runs in it.
type reader interface{ ReadAnew() }

// forgetPages drops what reads as the maker no longer does; nobody goes on telling it of
// kitchens and batches.
func (w *Window) forgetPages() {
	for i, p := range w.pages {
		if r, ok := p.(reader); ok {
			r.ReadAnew()
			continue
		}
		w.pages[i] = nil
	}
	w.kitchens.Forget()
	w.notebook.Forget()
	w.notebook.Tell(w.teach)
}

// rebuild makes bench and pages anew, with the words and units of now. The page
// in view stays in view.
func (w *Window) rebuild() {
	in := w.way.At()
	w.leave(in)
	w.forgetPages()
	w.way.Go(places.Bench)
	w.layOut()
	w.menus = newMenus(w)
	w.refresh()
	w.turnTo(in)
}
