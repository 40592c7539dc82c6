package coldpage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// view is one question: its tile, its choices and what it tells.
type view struct {
	coldview.Question
	tile   *kit.Tile
	show   []func(*cold.Answer)         // bring what it tells up to date
	levers []func()                     // bring the choices up to date
	at     map[string]fyne.CanvasObject // the lever of a setting of the kitchen or the design
	lead   func(path string)            // to the lever of a setting
	box    *fyne.Container
	notes  *fyne.Container
	noted  string
	fitted fyne.Size
	scroll *container.Scroll
}

func newView(q coldview.Question, lead func(path string)) *view {
	v := &view{Question: q, tile: kit.NewTile(nil), box: container.NewVBox(), notes: container.NewVBox(), at: map[string]fyne.CanvasObject{}, lead: lead}
	v.scroll = container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 8, 0, scrollBar), container.NewVBox(v.box, v.notes)))
	return v
}

// scrollBar is the room left for the bar at the right.
const scrollBar = 14

// add puts objects under the others.
func (v *view) add(objects ...fyne.CanvasObject) {
	for _, o := range objects {
		switch o.(type) {
		case *widget.Label, *kit.Figures: // which begin their text there
		default:
			o = container.New(page.Indent{}, o)
		}
		v.box.Add(o)
	}
}

// table adds a table of what rows makes of an answer.
func (v *view) table(heads []string, rows func(*cold.Answer) []say.TableRow) {
	t := kit.NewFigures(heads...)
	v.show = append(v.show, func(a *cold.Answer) { t.ShowFigures(rows(a)) })
	v.add(t)
}

// times adds a table of times.
func (v *view) times(rows func(*cold.Answer) []say.TableRow) { v.table(coldview.TimeHeads(), rows) }

// text adds a paragraph of what an answer says, hidden where that is nothing.
func (v *view) text(l *widget.Label, words func(*cold.Answer) string) {
	v.show = append(v.show, func(a *cold.Answer) {
		l.SetText(words(a))
		l.Hidden = l.Text == ""
	})
	v.add(l)
}

func (v *view) bold(words func(*cold.Answer) string)  { v.text(page.Bold(""), words) }
func (v *view) prose(words func(*cold.Answer) string) { v.text(page.Prose(""), words) }

// fromAndTo adds what the columns of the times are.
func (v *view) fromAndTo() {
	v.prose(func(a *cold.Answer) string { return say.FromAndTo(page.Reads, *v.Place(&a.Profile)) })
}

func (v *view) showLevers() {
	for _, f := range v.levers {
		f()
	}
}

// showTile puts the answer on the tile.
func (v *view) showTile(b say.Brief, chosen bool) {
	v.tile.ShowTile(kit.TileView{Title: v.Title(), Value: b.Answer, Foot: b.More}, chosen)
}

// showAnswer puts the answer into the view, and reports whether it then takes
// another room.
func (v *view) showAnswer(a *cold.Answer) bool {
	v.showLevers()
	for _, f := range v.show {
		f(a)
	}
	v.showNotes(a)
	return v.fit()
}

// showNotes lists the plan's notes that belong here, each with the way to what causes it,
// and where a plot ends.
func (v *view) showNotes(a *cold.Answer) {
	var rows []fyne.CanvasObject
	all := ""
	for _, text := range v.LawEnds(page.Reads, a) {
		rows = append(rows, page.Prose(text))
		all += text
	}
	for _, n := range v.Notes(a) {
		l := page.Prose(say.Remark(page.Reads, n))
		l.TextStyle.Bold = n.Severity > model.Note
		show := kit.NewButton(say.ShowCause.String(), func() { v.lead(cold.Cause(n)) })
		rows = append(rows, container.NewBorder(nil, nil, nil, container.NewVBox(show), l))
		all += l.Text
	}
	if all != v.noted {
		v.noted = all
		v.notes.Objects = rows
		v.notes.Refresh()
	}
}

// fit lays the view out anew if what it says takes another room, and reports
// whether it does.
func (v *view) fit() bool {
	size := v.scroll.Content.MinSize()
	if size == v.fitted {
		return false
	}
	v.fitted = size
	v.box.Refresh()
	v.scroll.Content.Refresh()
	return true
}
