package kit

import (
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/form/fold"
	"ripplewright/internal/show/say"
)

// A FinderItem is something to be found by name.
type FinderItem struct {
	ID, Title, Subtitle, Group string
}

// A Finder is a search field over a list that narrows as one types. Up and Down
// (and the pages) choose, Enter or a tap takes, Escape gives up. Where nothing
// has the words typed, it shows what is spelled most like them.
type Finder struct {
	widget.BaseWidget

	OnChosen    func(item FinderItem)
	OnCancelled func()
	OnMoved     func(item FinderItem) // the selection is on another item

	items    []FinderItem
	keys     []string // folded texts of items
	shown    []int    // indices of items, best first
	selected int      // place in shown
	told     string   // id of the item that OnMoved heard of last
	entry    *finderEntry
	list     *finderList
	nothing  *widget.Label
	moving   bool // the program is moving the selection, no hand
}

// NewFinder returns a finder over items.
func NewFinder(prompt string, items []FinderItem) *Finder {
	f := &Finder{nothing: widget.NewLabel(say.T("Nothing of that name"))}
	f.entry = &finderEntry{f: f}
	f.entry.PlaceHolder = prompt
	f.entry.ExtendBaseWidget(f.entry)
	f.entry.OnChanged = mishap.With(func(string) { f.filter() })
	f.entry.OnSubmitted = mishap.With(func(string) { f.take(f.selected) })
	f.list = &finderList{f: f}
	f.list.Length, f.list.CreateItem = func() int { return len(f.shown) }, newFinderRow
	f.list.UpdateItem = func(i widget.ListItemID, o fyne.CanvasObject) {
		if i < len(f.shown) {
			showFinderRow(o, f.items[f.shown[i]])
		}
	}
	f.list.ExtendBaseWidget(f.list)
	f.list.OnSelected = mishap.With(func(i widget.ListItemID) {
		f.selected = i
		f.tellMoved()
		if !f.moving {
			f.take(i)
		}
	})
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
		f.keys[i] = fold.Text(it.Title) + "\n" + fold.Text(it.Subtitle+" "+it.Group+" "+it.ID)
	}
	f.filter()
}

// Reset empties the search field and calls nobody back.
func (f *Finder) Reset() { f.entry.SetText("") }

// Select moves the selection to the item of that id, if it is shown.
func (f *Finder) Select(id string) {
	for i, k := range f.shown {
		if f.items[k].ID == id {
			f.choose(i)
			return
		}
	}
}

// Selected is the item that the selection is on, if there is one.
func (f *Finder) Selected() (it FinderItem, ok bool) {
	if f.selected >= len(f.shown) {
		return it, false
	}
	return f.items[f.shown[f.selected]], true
}

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
	words := strings.Fields(fold.Text(f.entry.Text))
	f.shown = f.shown[:0]
	rank := make(map[int]int, len(f.items))
	for i, key := range f.keys {
		if r := match(key, words); r >= 0 {
			rank[i] = r
			f.shown = append(f.shown, i)
		}
	}
	if len(f.shown) == 0 {
		for i, key := range f.keys {
			if r := resembles(key, words); r >= 0 {
				rank[i] = r
				f.shown = append(f.shown, i)
			}
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
	if f.selected == 0 { // a list without a size yet would scroll past it
		f.list.ScrollToTop()
	}
	f.moving = false
}

func (f *Finder) tellMoved() {
	if it, ok := f.Selected(); ok && it.ID != f.told && f.OnMoved != nil {
		f.told = it.ID
		mishap.Do(func() { f.OnMoved(it) })
	}
}

func (f *Finder) take(i int) {
	if i < len(f.shown) && f.OnChosen != nil {
		mishap.Do(func() { f.OnChosen(f.items[f.shown[i]]) })
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

// resembles ranks key for words that it does not have, by the worst of them: a
// word of three letters or more is meant if at least half of its pairs of
// neighbouring letters are those of one word of key. It is −1 if one is not.
func resembles(key string, words []string) int {
	worst := 0
	for _, w := range words {
		least := 200
		for i, k := range strings.FieldsFunc(key, func(r rune) bool { return r == ' ' || r == '\n' || r == '_' }) {
			if x := amiss(w, k); x <= 50 {
				least = min(least, x+min(i, 1)) // the title's first word before others
			}
		}
		if least == 200 {
			return -1
		}
		worst = max(worst, least)
	}
	return worst
}

// amiss is the per cent of the letter pairs of a and b that the other lacks.
func amiss(a, b string) int {
	if len(a) < 3 || len(b) < 3 {
		return 100
	}
	pairs := map[string]int{}
	for i := 0; i+1 < len(b); i++ {
		pairs[b[i:i+2]]++
	}
	common := 0
	for i := 0; i+1 < len(a); i++ {
		if pairs[a[i:i+2]] > 0 {
			pairs[a[i:i+2]]--
			common++
		}
	}
	return 100 - 200*common/(len(a)+len(b)-2)
}

// CreateRenderer implements fyne.Widget.
func (f *Finder) CreateRenderer() fyne.WidgetRenderer {
	f.ExtendBaseWidget(f)
	return widget.NewSimpleRenderer(container.NewBorder(f.entry, nil, nil, nil, container.NewStack(f.list, f.nothing)))
}

// MinSize asks for room for some rows.
func (f *Finder) MinSize() fyne.Size {
	f.ExtendBaseWidget(f)
	t := theme.TextSize()
	return fyne.NewSize(22*t, 14*t)
}

func newFinderRow() fyne.CanvasObject {
	title := widget.NewLabel("")
	title.Truncation = fyne.TextTruncateEllipsis
	return container.New(&finderRow{}, title, canvas.NewText("", theme.Color(theme.ColorNamePlaceHolder)))
}

func showFinderRow(o fyne.CanvasObject, it FinderItem) {
	row := o.(*fyne.Container)
	title, side := row.Objects[0].(*widget.Label), row.Objects[1].(*canvas.Text)
	title.SetText(Shown(it.Title))
	parts := []string{}
	for _, p := range []string{it.Subtitle, it.Group} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	row.Layout.(*finderRow).side = Shown(strings.Join(parts, " · "))
	side.TextSize, side.Color = theme.CaptionTextSize(), theme.Color(theme.ColorNamePlaceHolder)
	row.Refresh()
}

// A finderRow is a title and, small at the right, what else there is to say, cut to the room
// that the title leaves.
type finderRow struct{ side string }

// Layout implements fyne.Layout.
func (l *finderRow) Layout(o []fyne.CanvasObject, size fyne.Size) {
	title, side := o[0].(*widget.Label), o[1].(*canvas.Text)
	pad := theme.InnerPadding()
	least := widthOf(title.Text, theme.TextSize(), title.TextStyle) + 2*pad + 1 // or its last letter is cut
	side.Text = asFarAs(l.side, size.Width-least-pad, side.TextSize)
	width := widthOf(side.Text, side.TextSize, side.TextStyle)
	title.Resize(fyne.NewSize(max(0, size.Width-width-pad), size.Height))
	side.Move(fyne.NewPos(size.Width-width-pad, 0))
	side.Resize(fyne.NewSize(width, size.Height))
	side.Refresh()
}

// MinSize implements fyne.Layout.
func (l *finderRow) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

// asFarAs is s as far as it fits into a width, nothing where that is no word.
func asFarAs(s string, width, size float32) string {
	cut := Shortened(s, width, size, fyne.TextStyle{})
	if width <= 0 || cut != s && len([]rune(cut)) < 5 {
		return ""
	}
	return cut
}

// A finderEntry gives the keys that mean the list to the list.
type finderEntry struct {
	widget.Entry
	f *Finder
}

// TappedSecondary implements fyne.SecondaryTappable.
func (e *finderEntry) TappedSecondary(p *fyne.PointEvent) {
	OnScreen(e, func() { e.Entry.TappedSecondary(p) })
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
			mishap.Do(func() { e.f.OnCancelled() })
		}
	default:
		e.Entry.TypedKey(key)
	}
}

// finderList is what is found, a list that Escape leaves as it leaves the search field.
type finderList struct {
	widget.List
	f *Finder
}

// TypedKey implements fyne.Focusable.
func (l *finderList) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape && l.f.OnCancelled != nil {
		mishap.Do(l.f.OnCancelled)
		return
	}
	l.List.TypedKey(e)
}
