package coldpage

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/mishap"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// kitchenBar chooses the kitchen and opens what changes it.
type kitchenBar struct {
	p       *Page
	choose  *widget.Select
	remove  *kit.Button
	problem *widget.Label
	row     *fyne.Container
}

func newKitchenBar(p *Page) *kitchenBar {
	b := &kitchenBar{p: p, problem: page.Bold("")}
	b.problem.Importance = widget.WarningImportance
	b.problem.Hide()
	b.choose = kit.NewSelect(nil, nil)
	b.choose.OnChanged = mishap.With(func(name string) {
		d := p.host.Design()
		d.Kitchen.Profile = name
		p.host.Commit(d, "kitchen")
	})
	b.remove = kit.NewButton("Delete", b.askRemove)
	b.row = container.NewHBox(widget.NewLabel("Kitchen"), b.choose,
		kit.NewButton("Edit…", func() { p.editKitchen(p.kitchen, p.kitchen.Name) }),
		kit.NewButton("Copy…", func() {
			k := p.kitchen
			k.Name = p.freeName(k.Name)
			p.editKitchen(k, "")
		}), b.remove)
	return b
}

// show brings the bar up to date; err, if not nil, is told under it.
func (b *kitchenBar) show(said string) {
	all := b.p.kitchens.All()
	names := make([]string, len(all))
	for i, k := range all {
		names[i] = k.Name
	}
	known := len(b.choose.Options)
	b.choose.Options = names
	// A select is as wide as what stands in it when nothing is chosen.
	b.choose.PlaceHolder = slices.MaxFunc(names, func(x, y string) int { return utf8.RuneCountInString(x) - utf8.RuneCountInString(y) })
	if name := b.p.kitchen.Name; b.choose.Selected != name {
		b.choose.Selected = name
	}
	if b.choose.Refresh(); known != len(names) {
		b.row.Refresh()
	}
	own, builtIn := b.p.kitchens.Own(b.p.kitchen.Name), b.p.kitchens.BuiltIn(b.p.kitchen.Name)
	word := "Delete"
	if builtIn {
		word = "Reset"
	}
	if b.remove.Text != word {
		b.remove.SetText(word)
	}
	if b.remove.Disable(); own {
		b.remove.Enable()
	}
	if said == "" {
		b.problem.Hide()
		return
	}
	b.problem.SetText(said)
	b.problem.Show()
}

// askRemove deletes an own kitchen, or brings a built-in one back as it was.
func (b *kitchenBar) askRemove() {
	name := b.p.kitchen.Name
	verb, title, question := "Delete", "Delete the kitchen?", fmt.Sprintf("“%s” and its calibration are deleted.\nDesigns that name it use %s instead.", name, cold.Default().Name)
	if b.p.kitchens.BuiltIn(name) {
		verb, title, question = "Reset", "Reset the kitchen?", fmt.Sprintf("“%s” gets back its first settings;\nyour changes and calibrations are lost.", name)
	}
	kit.Confirm(b.p.host.Window(), title, question, verb, func() { b.removeNow(name) })
}

func (b *kitchenBar) removeNow(name string) {
	if err := b.p.kitchens.Remove(name); err != nil {
		kit.Tell(b.p.host.Window(), "This did not work", page.Sentence(err.Error()))
		return
	}
	if !b.p.kitchens.BuiltIn(name) {
		d := b.p.host.Design()
		d.Kitchen.Profile = ""
		b.p.host.Commit(d, "kitchen")
	}
}

// freeName is name with a number that no kitchen has.
func (p *Page) freeName(name string) string {
	for n := 2; ; n++ {
		try := fmt.Sprintf("%s %d", name, n)
		if _, err := p.kitchens.Find(try); err != nil {
			return try
		}
	}
}

// kitchenEditor is the dialog of all settings of a kitchen.
type kitchenEditor struct {
	p       *Page
	was     string // the name it is kept under; "": a new one
	kitchen cold.Profile
	numbers map[string]*kit.Number // by the setting's path
	problem *widget.Label
	dialog  *dialog.CustomDialog
}

var groups = map[string]string{
	"freezer": "The freezer", "counter": "The counter", "refrigerator": "The refrigerator",
	"stove": "The stove and the probe", "bowl": "The mixing bowl", "churn": "The churn", "cook": "The cook",
	"package": "The tub's wall and lid", "layer": "Freezing a phase before it goes into tubs",
}

// editKitchen opens the editor on k, kept so far under the name was.
func (p *Page) editKitchen(k cold.Profile, was string) *kitchenEditor {
	e := &kitchenEditor{p: p, was: was, kitchen: k, problem: page.Bold(""), numbers: map[string]*kit.Number{}}
	e.problem.Importance = widget.DangerImportance
	form := container.New(layout.NewFormLayout())
	last := ""
	for _, f := range cold.Fields() {
		group, _, inner := strings.Cut(f.Path, ".")
		if inner && group != last {
			last = group
			form.Add(page.Small(groups[group]))
			form.Add(widget.NewLabel(""))
		}
		about := f.About
		form.Add(widget.NewLabel(strings.ToUpper(about[:1]) + about[1:]))
		form.Add(e.input(f))
	}
	save := kit.NewButton("Save", e.save)
	save.Importance = widget.HighImportance
	title := "Edit the kitchen"
	if was == "" {
		title = "A new kitchen"
	}
	content := container.NewBorder(nil, container.NewVBox(e.problem,
		container.NewHBox(layout.NewSpacer(), kit.NewCancel("Cancel", func() { e.dialog.Hide() }), save)), nil, nil, container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, 0, scrollBar), form)))
	e.problem.Hide()
	e.dialog = dialog.NewCustomWithoutButtons(title, content, p.host.Window())
	e.dialog.Resize(fyne.NewSize(780, 600))
	e.dialog.Show()
	return e
}

// input is the widget of one setting.
func (e *kitchenEditor) input(f cold.Field) fyne.CanvasObject {
	switch v := f.At(&e.kitchen).(type) {
	case *float64:
		decimals := 1
		if f.Max <= 5 {
			decimals = 3
		}
		n := kit.NewNumber(f.Unit, f.Min, f.Max, decimals)
		n.ShowValue(*v)
		e.numbers[f.Path] = n
		return n
	case *string:
		if f.Choices != nil {
			s := kit.NewSelect(f.Choices, func(c string) { *v = c })
			s.Selected = *v
			return s
		}
		t := kit.NewLine()
		t.SetText(*v)
		t.OnChanged = mishap.With(func(text string) { *v = strings.TrimSpace(text) })
		return t
	}
	return widget.NewLabel("")
}

// save keeps the kitchen, unless something is wrong with it, which it says.
func (e *kitchenEditor) save() {
	err := e.check()
	if err == nil {
		err = e.p.kitchens.Keep(e.kitchen, e.was)
	}
	if err != nil {
		e.problem.SetText(page.Sentence(err.Error()))
		e.problem.Show()
		return
	}
	e.dialog.Hide()
	if d := e.p.host.Design(); d.Kitchen.Profile != e.kitchen.Name {
		d.Kitchen.Profile = e.kitchen.Name
		e.p.host.Commit(d, "kitchen")
	}
}

func (e *kitchenEditor) check() error {
	for _, f := range cold.Fields() {
		n := e.numbers[f.Path]
		if n == nil {
			continue
		}
		if err := n.Problem(); err != nil {
			return fmt.Errorf("%s: %w", f.About, err)
		}
		*f.At(&e.kitchen).(*float64) = n.Value()
	}
	if !strings.EqualFold(e.kitchen.Name, e.was) {
		if _, err := e.p.kitchens.Find(e.kitchen.Name); err == nil && e.kitchen.Name != "" {
			return errors.New("there is already a kitchen of that name")
		}
	}
	return e.kitchen.Validate()
}
