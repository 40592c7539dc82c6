package kit

import (
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// A FinderItem is something to be found by name.
type FinderItem struct {
	ID, Title, Subtitle, Group string
}

// A Finder is a search field over a list that narrows as one types. Up and Down
// (and the pages) choose, Enter or a tap takes, Escape gives up.
type Finder struct {
	widget.BaseWidget

	OnChosen    func(item FinderItem)
	OnCancelled func()

	items    []FinderItem
	keys     []string // folded texts of items
	shown    []int    // indices of items, best first
	selected int      // place in shown
	entry    *finderEntry
	list     *widget.List
	nothing  *widget.Label
	moving   bool // the program is moving the selection, no hand
}

// NewFinder returns a finder over items.
func NewFinder(prompt string, items []FinderItem) *Finder {
	f := &Finder{nothing: widget.NewLabel("Nothing of that name")}
	f.entry = &finderEntry{f: f}
	f.entry.PlaceHolder = prompt
	f.entry.ExtendBaseWidget(f.entry)
	f.entry.OnChanged = func(string) { f.filter() }
	f.entry.OnSubmitted = func(string) { f.take(f.selected) }
	f.list = widget.NewList(func() int { return len(f.shown) }, newFinderRow, func(i widget.ListItemID, o fyne.CanvasObject) {
		if i < len(f.shown) {
			showFinderRow(o, f.items[f.shown[i]])
		}
	})
	f.list.OnSelected = func(i widget.ListItemID) {
		f.selected = i
		if !f.moving {
			f.take(i)
		}
	}
	f.nothing.Importance = widget.LowImportance
	f.ExtendBaseWidget(f)
	f.ShowItems(items)
	return f
}

// ShowItems replaces what can be found, and keeps the text typed so far.
func (f *Finder) ShowItems(items []FinderItem) {
	f.items = items
	f.keys = make([]string, len(items))
	for i, it := range items {
		f.keys[i] = fold(it.Title) + "\n" + fold(it.Subtitle+" "+it.Group)
	}
	f.filter()
}

// Reset empties the search field and calls nobody back.
func (f *Finder) Reset() { f.entry.SetText("") }

// Focusable is the search field.
func (f *Finder) Focusable() fyne.Focusable { return f.entry }

// Found lists what is shown now, best first.
func (f *Finder) Found() []FinderItem {
	found := make([]FinderItem, len(f.shown))
	for i, k := range f.shown {
		found[i] = f.items[k]
	}
	return found
}

func (f *Finder) filter() {
	words := strings.Fields(fold(f.entry.Text))
	f.shown = f.shown[:0]
	rank := make(map[int]int, len(f.items))
	for i, key := range f.keys {
		if r := match(key, words); r >= 0 {
			rank[i] = r
			f.shown = append(f.shown, i)
		}
	}
	sort.SliceStable(f.shown, func(a, b int) bool { return rank[f.shown[a]] < rank[f.shown[b]] })
	f.nothing.Hidden = len(f.shown) > 0
	f.list.Refresh()
	f.choose(0)
}

// choose moves the selection without taking anything.
func (f *Finder) choose(i int) {
	if len(f.shown) == 0 {
		f.selected = 0
		return
	}
	f.moving = true
	f.selected = max(0, min(i, len(f.shown)-1))
	f.list.UnselectAll()
	f.list.Select(f.selected)
	f.moving = false
}

func (f *Finder) take(i int) {
	if i < len(f.shown) && f.OnChosen != nil {
		f.OnChosen(f.items[f.shown[i]])
	}
}

// match ranks key, a folded title and the rest on a second line, for the words
// typed: 0 if the title begins with the first, 1 if every word begins a word of
// the title, 2 if the title has them all, 3 if they are anywhere, −1 if not.
func match(key string, words []string) int {
	title, _, _ := strings.Cut(key, "\n")
	rank := 0
	for i, w := range words {
		r := 0
		switch {
		case i == 0 && strings.HasPrefix(title, w):
		case strings.Contains(" "+title, " "+w):
			r = 1
			if i > 0 {
				r = 0
			}
		case strings.Contains(title, w):
			r = 2
		case strings.Contains(key, w):
			r = 3
		default:
			return -1
		}
		rank = max(rank, r)
	}
	return rank
}

var accents = strings.NewReplacer(
	"á", "a", "à", "a", "â", "a", "ä", "a", "ã", "a", "å", "a", "ç", "c", "č", "c", "ď", "d", "é", "e", "è", "e", "ê", "e",
	"ë", "e", "ě", "e", "í", "i", "ì", "i", "î", "i", "ï", "i", "ñ", "n", "ň", "n", "ó", "o", "ò", "o", "ô", "o", "ö", "o",
	"õ", "o", "ø", "o", "ř", "r", "š", "s", "ť", "t", "ú", "u", "ù", "u", "û", "u", "ü", "u", "ů", "u", "ý", "y", "ž", "z",
	"œ", "oe", "æ", "ae", "ß", "ss", "-", " ", ",", " ", "(", " ", ")", " ")

// fold makes texts comparable that differ in case, accents or punctuation.
func fold(s string) string { return strings.TrimSpace(accents.Replace(strings.ToLower(s))) }

// CreateRenderer implements fyne.Widget.
func (f *Finder) CreateRenderer() fyne.WidgetRenderer {
	f.ExtendBaseWidget(f)
	return widget.NewSimpleRenderer(container.NewBorder(f.entry, nil, nil, nil, container.NewStack(f.list, f.nothing)))
}

// MinSize asks for room for some rows.
func (f *Finder) MinSize() fyne.Size {
	f.ExtendBaseWidget(f)
	t := theme.TextSize()
	return fyne.NewSize(22*t, 20*t)
}

func newFinderRow() fyne.CanvasObject {
	title := widget.NewLabel("")
	title.Truncation = fyne.TextTruncateEllipsis
	return container.NewBorder(nil, nil, nil, canvas.NewText("", theme.Color(theme.ColorNamePlaceHolder)), title)
}

func showFinderRow(o fyne.CanvasObject, it FinderItem) {
	row := o.(*fyne.Container)
	title, side := row.Objects[0].(*widget.Label), row.Objects[1].(*canvas.Text)
	title.SetText(it.Title)
	parts := []string{}
	for _, p := range []string{it.Subtitle, it.Group} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	side.Text = strings.Join(parts, " · ") + "  "
	side.TextSize, side.Color = theme.CaptionTextSize(), theme.Color(theme.ColorNamePlaceHolder)
	side.Refresh()
	row.Refresh()
}

// A finderEntry gives the keys that mean the list to the list.
type finderEntry struct {
	widget.Entry
	f *Finder
}

// TypedKey moves in the list, or edits the text.
func (e *finderEntry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyUp:
		e.f.choose(e.f.selected - 1)
	case fyne.KeyDown:
		e.f.choose(e.f.selected + 1)
	case fyne.KeyPageUp:
		e.f.choose(e.f.selected - 8)
	case fyne.KeyPageDown:
		e.f.choose(e.f.selected + 8)
	case fyne.KeyEscape:
		if e.f.OnCancelled != nil {
			e.f.OnCancelled()
		}
	default:
		e.Entry.TypedKey(key)
	}
}
