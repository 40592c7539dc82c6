package ui

import (
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
	"ripplewright/ui/theme"
)

// menus are the main menu and what of it changes.
type menus struct {
	w          *Window
	main       *fyne.MainMenu
	undo, redo *fyne.MenuItem
	recent     *fyne.MenuItem
	marks      []mark
	shown      string
}

// mark is an item that is checked while something holds.
type mark struct {
	item *fyne.MenuItem
	on   func() bool
}

func command(name string, key fyne.KeyName, more fyne.KeyModifier, do func()) *fyne.MenuItem {
	it := fyne.NewMenuItem(name, do)
	if key != "" {
		it.Shortcut = &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | more}
	}
	return it
}

func newMenus(w *Window) *menus {
	m := &menus{w: w}
	m.undo = fyne.NewMenuItem(say.T("Undo"), mishap.Func(w.undo))
	m.undo.Shortcut = &fyne.ShortcutUndo{}
	m.redo = fyne.NewMenuItem(say.T("Redo"), mishap.Func(w.redo))
	m.redo.Shortcut = &fyne.ShortcutRedo{}
	m.main = fyne.NewMainMenu(m.files(), fyne.NewMenu(say.T("Edit"), m.undo, m.redo, fyne.NewMenuItemSeparator(),
		command(say.DesignItem.String(), fyne.KeyD, 0, w.editDesign),
		command(say.RecipeItem.String(), fyne.KeyV, fyne.KeyModifierShift, func() { w.askRecipe(design.DensePart, "") }),
		command(say.T("Use whole eggs…"), "", 0, w.askWholeEggs)), m.going(), m.views(), m.help())
	m.mark()
	for _, menu := range m.main.Items {
		w.guard(menu)
	}
	w.win.SetMainMenu(m.main)
	return m
}

// files are the menu of files.
func (m *menus) files() *fyne.Menu {
	w := m.w
	m.recent = fyne.NewMenuItem(say.T("Open recent"), nil)
	m.recent.ChildMenu = fyne.NewMenu("")
	demos := fyne.NewMenuItem(say.T("Open a demo"), nil)
	demos.ChildMenu = fyne.NewMenu("")
	for _, d := range w.Demos {
		demos.ChildMenu.Items = append(demos.ChildMenu.Items, fyne.NewMenuItem(d.Name, func() {
			w.unlessUnsaved(func() { w.Session.Start(d.Design) })
		}))
	}
	file := fyne.NewMenu(say.T("File"),
		command(say.T("New"), fyne.KeyN, 0, func() { w.unlessUnsaved(w.startNew) }),
		command(say.StartItem.String(), fyne.KeyN, fyne.KeyModifierShift, func() { w.unlessUnsaved(w.askStart) }),
		command(say.T("Open…"), fyne.KeyO, 0, func() { w.unlessUnsaved(w.openDialog) }),
		m.recent, demos, fyne.NewMenuItemSeparator(),
		command(say.T("Save"), fyne.KeyS, 0, func() { w.save(nil) }),
		command(say.SaveAsItem.String(), fyne.KeyS, fyne.KeyModifierShift, func() { w.saveAs(nil) }),
		command(say.CompareItem.String(), fyne.KeyD, fyne.KeyModifierShift|fyne.KeyModifierAlt, w.askCompare),
		fyne.NewMenuItem(say.KeepVersion.String(), w.keepVersion),
		fyne.NewMenuItem(say.VersionsItem.String(), w.askVersions),
		fyne.NewMenuItem(say.EarlierItem.String(), w.askEarlier),
		fyne.NewMenuItem(say.UnsavedItem.String(), w.askUnsaved),
		fyne.NewMenuItemSeparator(),
		command(say.T("Export card…"), fyne.KeyE, 0, w.exportCard),
		fyne.NewMenuItemSeparator())
	quit := command(say.T("Quit"), fyne.KeyQ, 0, w.close)
	quit.IsQuit = true
	file.Items = append(file.Items, quit)
	return file
}

// going is the menu of the pages, a menu of each group below it.
func (m *menus) going() *fyne.Menu {
	w := m.w
	menu := fyne.NewMenu(say.GoMenu.String())
	keys := [...]fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4}
	for g, group := range places.Groups {
		head := command(group.Name.String(), keys[g], 0, func() { w.turnTo(w.way.Into(g)) })
		head.ChildMenu = fyne.NewMenu("")
		for _, p := range group.Places {
			it := fyne.NewMenuItem(p.Name(), func() { w.turnTo(p) })
			head.ChildMenu.Items = append(head.ChildMenu.Items, it)
			m.marks = append(m.marks, mark{it, func() bool { return w.way.At() == p }})
		}
		m.marks = append(m.marks, mark{head, func() bool { return w.way.At().Group() == g }})
		menu.Items = append(menu.Items, head)
	}
	figures := command(say.AllFigures.String(), fyne.KeyI, 0, func() { w.turnTo(places.Figures) })
	m.marks = append(m.marks, mark{figures, func() bool { return w.way.At() == places.Figures }})
	menu.Items = append(menu.Items, figures, fyne.NewMenuItemSeparator(),
		command(say.NextPage.String(), fyne.KeyPageDown, 0, func() { w.turnTo(w.way.Next(1)) }),
		command(say.PageBefore.String(), fyne.KeyPageUp, 0, func() { w.turnTo(w.way.Next(-1)) }))
	return menu
}

// views are the menu of looks and units.
func (m *menus) views() *fyne.Menu {
	w := m.w
	view := fyne.NewMenu(say.T("View"))
	look := func(name string, change func(*theme.Options), on func() bool) {
		it := fyne.NewMenuItem(name, func() {
			change(&w.look)
			w.applyLook()
		})
		view.Items = append(view.Items, it)
		m.marks = append(m.marks, mark{it, on})
	}
	for _, v := range [...]struct {
		name    string
		variant theme.Variant
	}{{say.DesktopLook.String(), theme.Follow}, {say.T("Light"), theme.Light}, {say.T("Dark"), theme.Dark}} {
		look(v.name, func(o *theme.Options) { o.Variant = v.variant }, func() bool { return w.look.Variant == v.variant })
	}
	look(say.T("High contrast"), func(o *theme.Options) { o.HighContrast = !o.HighContrast }, func() bool { return w.look.HighContrast })
	view.Items = append(view.Items, fyne.NewMenuItemSeparator())
	for _, percent := range [...]float32{100, 125, 150} {
		look(say.TextSize(page.Reads, float64(percent)), func(o *theme.Options) { o.TextScale = percent / 100 },
			func() bool { return w.look.TextScale == percent/100 })
	}
	view.Items = append(view.Items, fyne.NewMenuItemSeparator(), command(say.UnitsItem.String(), fyne.KeyU, 0, w.askUnits))
	return view
}

// help is the menu of what there is to read.
func (m *menus) help() *fyne.Menu {
	w := m.w
	return fyne.NewMenu(say.T("Help"),
		fyne.NewMenuItem(say.T("Keys"), func() { w.text(say.T("Keys"), say.KeysHelp.String()) }),
		fyne.NewMenuItem(say.HowSure.String(), func() { w.turnTo(places.Sure) }),
		fyne.NewMenuItem(say.T("Cautions"), func() { w.text(say.T("Cautions"), page.Reads.Text(say.UsualCautions.String())) }),
		fyne.NewMenuItem(say.SourcesItem.String(), w.showSources),
		fyne.NewMenuItem(say.T("About"), func() {
			w.text(say.T("About"), say.About(w.Version))
		}))
}

// guard lets no item act behind an open dialog, which its keys would reach.
// Undo and redo see to that themselves: in a dialog's fields they are at home.
func (w *Window) guard(menu *fyne.Menu) {
	for _, it := range menu.Items {
		if it.ChildMenu != nil {
			w.guard(it.ChildMenu)
		}
		if do := it.Action; do != nil && !isUndo(it) {
			it.Action = func() {
				if !w.asking() {
					mishap.Do(do)
				}
			}
		}
	}
}

func isUndo(it *fyne.MenuItem) bool {
	switch it.Shortcut.(type) {
	case *fyne.ShortcutUndo, *fyne.ShortcutRedo:
		return true
	}
	return false
}

// asking reports whether a dialog is open.
func (w *Window) asking() bool { return w.win.Canvas().Overlays().Top() != nil }

// text shows Markdown in a dialog that scrolls.
func (w *Window) text(title, md string) {
	rich := widget.NewRichTextFromMarkdown(untabled(md))
	rich.Wrapping = fyne.TextWrapWord
	var dg *dialog.CustomDialog
	dg = kit.Ask(w.win, title, container.NewVScroll(rich), kit.Answer{Name: say.T("Close"), Role: kit.ByReturn, Do: func() { dg.Hide() }})
	dg.Resize(page.Room(w.win.Canvas(), 48, 48))
}

// untabled makes the rows of Markdown's tables, of which the toolkit knows nothing, items of a
// list, the first cell of each in bold.
func untabled(md string) string {
	lines := strings.Split(md, "\n")
	out := lines[:0]
	for i, line := range lines {
		if !strings.HasPrefix(line, "|") {
			out = append(out, line)
			continue
		}
		if strings.HasPrefix(line, "|--") || i+1 < len(lines) && strings.HasPrefix(lines[i+1], "|--") {
			continue // its head
		}
		var cells []string
		for _, c := range strings.Split(strings.Trim(line, "|"), "|") {
			if c = strings.TrimSpace(c); c != "" {
				cells = append(cells, c)
			}
		}
		if len(cells) == 0 {
			continue
		}
		out = append(out, "- **"+cells[0]+"** "+strings.Join(cells[1:], " · "))
	}
	return strings.Join(out, "\n")
}

// show keeps the names of undo and redo and the recent files up to date.
func (m *menus) show() {
	s := m.w.Session
	u, r := say.UndoItem(stepText(s.UndoName(), s.UndoChange)), say.RedoItem(stepText(s.RedoName(), s.RedoChange))
	key := u + r + s.Path()
	if key == m.shown {
		return
	}
	m.shown = key
	m.undo.Label, m.undo.Disabled = u, s.UndoName() == ""
	m.redo.Label, m.redo.Disabled = r, s.RedoName() == ""
	m.recent.ChildMenu.Items = nil
	for _, p := range m.w.recent() {
		m.recent.ChildMenu.Items = append(m.recent.ChildMenu.Items, fyne.NewMenuItem(filepath.Base(p), mishap.Func(func() {
			m.w.unlessUnsaved(func() { m.w.open(p) })
		})))
	}
	m.recent.Disabled = len(m.recent.ChildMenu.Items) == 0
	m.main.Refresh()
}

// mark checks the page and the look that hold.
func (m *menus) mark() {
	for _, x := range m.marks {
		x.item.Checked = x.on()
	}
	m.main.Refresh()
}

// typist is a field for text with an undo of its own.
type typist interface {
	Undo()
	Redo()
}

// typing returns the field whose typing undo is about: one that has the
// keyboard, unless what was typed in it has been settled and is the design's.
func (w *Window) typing() (typist, bool) {
	f, ok := w.win.Canvas().Focused().(typist)
	if n, settles := f.(interface{ Typing() bool }); settles && !n.Typing() {
		return nil, false
	}
	return f, ok
}

// undo takes a step back, of the typing or of the design.
func (w *Window) undo() {
	if f, ok := w.typing(); ok {
		f.Undo()
		return
	}
	if !w.asking() && w.Session.Undo() {
		w.event("undo")
	}
}

func (w *Window) redo() {
	if f, ok := w.typing(); ok {
		f.Redo()
		return
	}
	if !w.asking() && w.Session.Redo() {
		w.event("redo")
	}
}
