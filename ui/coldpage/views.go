package coldpage

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// coldView is one question: its tile, its figures, its choices and its scene.
type coldView struct {
	title  string
	tile   *kit.Tile
	say    func(*cold.Answer) kit.TileView
	show   func(*cold.Answer)
	scene  func(*cold.Answer) scene
	where  []string // of the notes shown here
	scroll *container.Scroll

	levers []func() // bring the choices up to date
	box    *fyne.Container
	notes  *fyne.Container
	noted  string
	fitted fyne.Size
}

// The views in the order of their tiles.
const (
	custardView = iota
	foamView
	hardenView
	counterView
	fridgeView
	storageView
)

func (p *Page) newViews() []*coldView {
	return []*coldView{p.newCustardView(), p.newFoamView(), p.newHardenView(), p.newServingView(false), p.newServingView(true), p.newStorageView()}
}

func newColdView(title string, where ...string) *coldView {
	v := &coldView{title: title, tile: kit.NewTile(nil), where: where, box: container.NewVBox(), notes: container.NewVBox()}
	v.scroll = container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 8, 0, scrollBar), container.NewVBox(v.box, v.notes)))
	return v
}

func (v *coldView) add(objects ...fyne.CanvasObject) {
	for _, o := range objects {
		if _, text := o.(*widget.Label); !text {
			o = container.New(page.Indent{}, o)
		}
		v.box.Add(o)
	}
}

func (v *coldView) showLevers() {
	for _, f := range v.levers {
		f()
	}
}

// fit lays the view out anew if what it says takes another room, and reports
// whether it does.
func (v *coldView) fit() bool {
	size := v.scroll.Content.MinSize()
	if size == v.fitted {
		return false
	}
	v.fitted = size
	v.box.Refresh()
	v.scroll.Content.Refresh()
	return true
}

// scrollBar is the room left for the bar at the right.
const scrollBar = 14

// showNotes lists the plan's notes that belong here.
func (v *coldView) showNotes(notes []model.Warning) {
	var rows []fyne.CanvasObject
	all := ""
	for _, n := range notes {
		if slices.Contains(v.where, n.Where) && n.Code != "water_drawn_in_storage" { // the view says that itself

			l := page.Prose(say.Severity(n.Severity) + ": " + say.Warning(page.Reads, n))
			l.TextStyle.Bold = n.Severity > model.Note
			rows = append(rows, l)
			all += l.Text
		}
	}
	if all != v.noted {
		v.noted = all
		v.notes.Objects = rows
		v.notes.Refresh()
	}
}

// The tables of times have these columns.
const timeColumns = "about from to"

func newTimes() *kit.Figures { return kit.NewFigures(strings.Fields(timeColumns)...) }

// times is a row of a table of times in minutes.
func times(name string, r cold.Range) kit.Figure {
	word := func(minute float64) string { // one unit a row
		return say.Reached(page.Reads, minute, r.Value, r.High)
	}
	return kit.Figure{Name: name, Cells: []string{word(r.Value), word(r.Low), word(r.High)}}
}

// hours is the same of a time in hours.
func hours(name string, r cold.Range) kit.Figure {
	return times(name, cold.Range{Value: 60 * r.Value, Low: 60 * r.Low, High: 60 * r.High})
}

// bandWord says what from and to mean for a place.
func bandWord(p cold.Place) string {
	s := "From and to: how well the air takes the heat away is known to ±" + page.Reads.Percent(100*p.Spread(), 0)
	if p.Measured == "" {
		return s + "."
	}
	return s + ", as measured here."
}

func celsius(v float64) string { return page.Reads.TemperatureTo(v, 1) }

// minus gives numbers after a space or a bracket their true minus sign.
func minus(s string) string {
	for _, before := range []string{" ", "("} {
		for d := '0'; d <= '9'; d++ {
			s = strings.ReplaceAll(s, before+"-"+string(d), before+"−"+string(d))
		}
	}
	return s
}

// newCustardView is the custard freezing in its dish.
func (p *Page) newCustardView() *coldView {
	v := newColdView("Freeze the custard", "still_freeze")
	together, how, band := page.Bold(""), page.Prose(""), page.Prose("")
	reach := newTimes()
	stirs := kit.NewFigures("mean, °C", "edge, °C", "frozen, %")
	noStirs := page.Prose("")
	p.freezing(v)
	p.stirring(v)
	v.add(together, reach, how, page.Small("Stir at"), stirs, noStirs, band)
	v.say = func(a *cold.Answer) kit.TileView {
		c := &a.StillFreeze.Dense
		t := sayFrozen(c)
		if c.Present && c.Ready.Known() {
			t.Foot = fmt.Sprintf("to swirl; stir %s", often(stirsBefore(c)))
		}
		return t
	}
	v.show = func(a *cold.Answer) {
		c := &a.StillFreeze.Dense
		together.SetText(togetherWord(&a.StillFreeze))
		how.SetText(howWord(c))
		rows := []kit.Figure{times("First ice at the edge", c.FirstIce)}
		if c.Present && !math.IsNaN(c.ReadyC) {
			rows = append(rows, times("Whip air in, "+celsius(c.WhipC), c.Whip), times("Swirl, "+celsius(c.ReadyC), c.Ready))
		}
		reach.ShowFigures(rows)
		var list []kit.Figure
		for _, s := range firstStirs(c) {
			list = append(list, kit.Figure{Name: page.Reads.Duration(s.Minute), Cells: []string{page.Number(s.MeanC, 1), page.Number(s.EdgeC, 1), page.Number(s.WaterFrozenPercent, 0)}})
		}
		stirs.ShowFigures(list)
		noStirs.SetText("Mean and ice just after the stir; the edge, the coldest spot, just before it.")
		if len(list) < len(c.Stirs) {
			noStirs.SetText("More stirs follow. " + noStirs.Text)
		}
		if len(list) == 0 {
			noStirs.SetText("It needs no stir before it is ready.")
		}
		band.SetText(bandWord(a.Profile.Freezer))
	}
	v.scene = func(a *cold.Answer) scene { return freezingScene(v.title, &a.StillFreeze.Dense) }
	return v
}

// newFoamView is the foam cooling in its dish.
func (p *Page) newFoamView() *coldView {
	v := newColdView("Freeze the foam")
	together, how, band := page.Bold(""), page.Prose(""), page.Prose("")
	reach := newTimes()
	p.freezing(v)
	v.add(together, reach, how, page.Prose("Leave it alone: beating lets its air out."), band)
	v.say = func(a *cold.Answer) kit.TileView {
		c, s := &a.StillFreeze.Foam, &a.StillFreeze
		t := sayFrozen(c)
		if c.Present && c.Ready.Known() {
			t.Foot = "to swirl; leave it alone"
			if s.StartFirst == "custard" {
				t.Foot = fmt.Sprintf("to swirl; in %s after the custard", page.Reads.Duration(s.HeadStartMinutes))
			}
		}
		return t
	}
	v.show = func(a *cold.Answer) {
		c := &a.StillFreeze.Foam
		together.SetText(togetherWord(&a.StillFreeze))
		how.SetText(howWord(c))
		var rows []kit.Figure
		if c.FirstIce.Known() {
			rows = append(rows, times("First ice at the edge", c.FirstIce))
		}
		if c.Present {
			rows = append(rows, times("Swirl, "+celsius(c.ReadyC), c.Ready))
		}
		reach.ShowFigures(rows)
		band.SetText(bandWord(a.Profile.Freezer))
	}
	v.scene = func(a *cold.Answer) scene { return freezingScene(v.title, &a.StillFreeze.Foam) }
	return v
}

// stirsBefore is how many stirs come before a phase is ready.
func stirsBefore(c *cold.Cooling) int {
	n := 0
	for _, s := range c.Stirs {
		if s.Minute < c.Ready.Value {
			n++
		}
	}
	return n
}

func often(n int) string {
	switch n {
	case 0:
		return "never"
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

func sayFrozen(c *cold.Cooling) kit.TileView {
	switch {
	case !c.Present:
		return kit.TileView{Value: "–", Foot: "the tub has none"}
	case !c.Ready.Known():
		return kit.TileView{Value: "never", Foot: "not stiff enough to swirl"}
	}
	return kit.TileView{Value: page.Reads.Duration(c.Ready.Value)}
}

func howWord(c *cold.Cooling) string {
	if !c.Present {
		return "The tub has none."
	}
	word := page.Reads.Volume(c.VolumeML) + ", " + page.Reads.Length(c.Vessel.HeightMM) + " deep. Ready when " + say.Ready(page.Reads, c) + "."
	if !c.Ready.Known() {
		word = page.Reads.Volume(c.VolumeML) + ", " + page.Reads.Length(c.Vessel.HeightMM) + " deep. It is never ready: " + say.Ready(page.Reads, c) + "."
	}
	if c.Vessel.Box {
		word += " " + say.Warning(page.Reads, model.Warning{Code: "box_as_round", Facts: cold.BoxAsRound{Dish: true}})
	}
	return word
}

func togetherWord(s *cold.StillFreeze) string {
	switch {
	case !s.Dense.Present || !s.Foam.Present:
		return "Only one phase has to freeze."
	case s.StartFirst == "":
		return "The two cannot be swirled together: one never gets stiff enough."
	case s.HeadStartMinutes < 1:
		return fmt.Sprintf("Put both in at once: both can be swirled after %s.", page.Reads.Duration(s.ReadyMinutes))
	}
	second := "foam"
	if s.StartFirst == "foam" {
		second = "custard"
	}
	return fmt.Sprintf("Put the %s in first and the %s %s later: both can be swirled %s after the first went in.",
		s.StartFirst, second, page.Reads.Duration(s.HeadStartMinutes), page.Reads.Duration(s.ReadyMinutes))
}

// newHardenView is the filled tub in the freezer.
func (p *Page) newHardenView() *coldView {
	v := newColdView("Harden the tub", "harden", "tubs")
	start, band := page.Prose(""), page.Prose("")
	reach := newTimes()
	p.lever(v, "Freezer", "freezer.air_c", 0.5)
	p.tubShape(v)
	v.add(reach, start, band)
	p.calibration(v, cold.CoreAt)
	v.say = func(a *cold.Answer) kit.TileView {
		h := &a.Harden
		if !h.Hours.Known() {
			return kit.TileView{Value: "never", Foot: "the core stays above " + page.Reads.Temperature(h.CoreToC)}
		}
		foot := "until its core is at " + page.Reads.Temperature(h.CoreToC) + ", all that this freezer gives"
		if h.MoveC > h.CoreToC {
			foot = fmt.Sprintf("to store; %s until it can be moved", page.Reads.Duration(60*h.MoveHours.Value))
		}
		return kit.TileView{Value: page.Reads.Duration(60 * h.Hours.Value), Foot: foot}
	}
	v.show = func(a *cold.Answer) {
		h := &a.Harden
		reach.ShowFigures([]kit.Figure{
			hours("Move: core at "+page.Reads.Temperature(h.MoveC), h.MoveHours),
			hours("Store: core at "+page.Reads.Temperature(h.CoreToC), h.Hours),
		})
		start.SetText(say.IntoTheFreezer(page.Reads, a))
		band.SetText(bandWord(a.Profile.Freezer))
	}
	v.scene = func(a *cold.Answer) scene { return hardenScene(v.title, &a.Harden) }
	return v
}

// newServingView is the tub on the counter, or in the refrigerator.
func (p *Page) newServingView(fridge bool) *coldView {
	v := newColdView("Leave out", "serving_window", "tubs")
	place, name := "counter", "Counter"
	of := func(a *cold.Answer) *cold.Serving { return &a.Counter }
	if fridge {
		v = newColdView("In the refrigerator", "tubs")
		place, name = "refrigerator", "Refrigerator"
		of = func(a *cold.Answer) *cold.Serving { return &a.Fridge }
	}
	word, band := page.Bold(""), page.Prose("")
	reach := newTimes()
	bands := kit.NewFigures("from, °C", "to, °C", "from", "to")
	inside := kit.NewFigures("ring, °C", "core, °C")
	p.lever(v, name, place+".air_c", 0.5)
	p.lever(v, "Freezer", "freezer.air_c", 0.5)
	p.tubShape(v)
	v.add(word, reach, page.Small("The outer ring is right for"), bands, page.Small("Inside the tub"), inside, band)
	if !fridge {
		p.calibration(v, cold.ScoopedWell)
	}
	v.say = func(a *cold.Answer) kit.TileView { return sayServing(of(a)) }
	v.show = func(a *cold.Answer) {
		s := of(a)
		serving := p.of.Design.Serving.TemperatureC
		word.SetText(say.Softening(page.Reads, s))
		reach.ShowFigures(servingRows(s, serving))
		bands.ShowFigures([]kit.Figure{bandRow("Custard", &s.Dense), bandRow("Ribbon", &s.Foam),
			bandRow("Both", &cold.Band{Present: true, OK: s.OK, FromC: s.FromC, ToC: s.ToC, From: s.From, To: s.To})})
		at := func(name string, r cold.Range) kit.Figure {
			if !r.Known() {
				return kit.Figure{Name: name, Cells: []string{"", ""}}
			}
			m := s.Run.At(r.Value)
			return kit.Figure{Name: name, Cells: []string{page.Number(m.RingC, 1), page.Number(m.CoreC, 1)}}
		}
		inside.ShowFigures([]kit.Figure{at("When it begins to scoop", s.From), at("When the whole tub does", s.Whole), at("When the ring is too soft", s.To)})
		where := a.Profile.Counter
		if fridge {
			where = a.Profile.Refrigerator
		}
		band.SetText(bandWord(where))
	}
	v.scene = func(a *cold.Answer) scene { return servingScene(v.title, of(a)) }
	return v
}

// servingRows are the times of a tub that softens; those of scooping only where
// it does.
func servingRows(s *cold.Serving, serving float64) []kit.Figure {
	var rows []kit.Figure
	if s.OK {
		rows = append(rows, times("Outer ring scoops", s.From), times("Whole tub scoops", s.Whole),
			times("Coldest spot scoops", s.Core), times("Outer ring too soft", s.To))
	}
	rows = append(rows, times("Melts at the wall", s.MeltsAtWall))
	if s.StartC > serving {
		return append(rows, kit.Figure{Name: celsius(serving) + ": the freezer is warmer", Cells: []string{"", "", ""}})
	}
	return append(rows, times("Ring at "+celsius(serving), s.RingServing), times("Tub at "+celsius(serving), s.MeanServing))
}

func sayServing(s *cold.Serving) kit.TileView {
	soft := ""
	if s.To.Known() {
		soft = "the ring is too soft by " + page.Reads.Duration(s.To.Value)
	}
	switch {
	case !s.OK && s.FromC < s.ToC && s.StartC >= s.ToC:
		return kit.TileView{Value: "no time", Foot: "too soft straight from the freezer"}
	case !s.OK:
		return kit.TileView{Value: "no time", Foot: "never right for both phases"}
	case !s.From.Known():
		return kit.TileView{Value: "never", Foot: "does not soften that far"}
	case s.From.Value == 0:
		return kit.TileView{Value: "at once", Foot: soft}
	case s.Whole.Known() && !(s.Whole.Value >= s.To.Value):
		return kit.TileView{Value: page.Reads.DurationSpan(s.From.Value, s.Whole.Value), Foot: soft}
	}
	return kit.TileView{Value: page.Reads.Duration(s.From.Value), Foot: soft}
}

func bandRow(name string, b *cold.Band) kit.Figure {
	f := kit.Figure{Name: name, Cells: []string{"", "", "", ""}}
	if b.Present && b.OK {
		f.Cells = []string{page.Number(b.FromC, 1), page.Number(b.ToC, 1), say.Reached(page.Reads, b.From.Value), say.Reached(page.Reads, b.To.Value)}
	}
	return f
}

// newStorageView is the tub in the freezer for good.
func (p *Page) newStorageView() *coldView {
	v := newColdView("Keep it", "storage")
	word, change, note := page.Bold(""), page.Prose(""), page.Prose("")
	phases := kit.NewFigures("custard", "foam")
	ageing := kit.NewFigures("index")
	p.lever(v, "Freezer", "freezer.air_c", 0.5)
	p.lever(v, "Swings by", "freezer.swing_k", 0.5)
	v.add(word, change, phases, page.Small("Ageing, growth of ice crystals at −18 °C = 1"), ageing, note)
	v.say = func(a *cold.Answer) kit.TileView {
		s := &a.Storage
		t := kit.TileView{Value: "no water moves", Foot: ageingFoot(s)}
		if s.WaterDrawn {
			t.Value = "water moves"
			t.Foot = "the " + s.Drawer + " draws it; " + t.Foot
		}
		return t
	}
	v.show = func(a *cold.Answer) {
		s := &a.Storage
		word.SetText(say.Storage(page.Reads, s))
		change.SetText(say.StorageChange(page.Reads, s))
		change.Hidden = change.Text == ""
		phases.ShowFigures(storedRows(s))
		rows := []kit.Figure{ageingRow("In this freezer", s.AtC, s.AgeingIndex)}
		if s.SwingK > 0 {
			rows = append(rows, ageingRow("At its warm end", s.AtC+s.SwingK, s.AgeingIndexWarm))
		}
		for i, t := range cold.AgeingAtC {
			rows = append(rows, ageingRow("At", t, s.Ageing[i]))
		}
		ageing.ShowFigures(rows)
		note.SetText(say.Ageing(page.Reads, s))
	}
	v.scene = func(a *cold.Answer) scene { return storageScene(v.title, &a.Storage, p.of.Result) }
	return v
}

func storedRows(s *cold.Storage) []kit.Figure {
	row := func(name, unit string, decimals int, of func(*cold.Stored) float64) kit.Figure {
		f := kit.Figure{Name: name, Unit: unit, Cells: []string{"", ""}}
		for i, x := range [...]*cold.Stored{&s.Dense, &s.Foam} {
			if x.Present {
				f.Cells[i] = page.Number(of(x), decimals)
			}
		}
		return f
	}
	rows := []kit.Figure{
		row("Freezes at", "°C", 1, func(x *cold.Stored) float64 { return x.FreezingPointC }),
		row("Water frozen", "%", 0, func(x *cold.Stored) float64 { return x.WaterFrozenPercent }),
		row("Ice that a swing melts", "%", 1, func(x *cold.Stored) float64 { return x.SwingPercent }),
	}
	if s.WaterDrawn {
		drawn := kit.Figure{Name: "Water drawn, at most", Unit: "g/100 g", Cells: []string{"", ""}}
		i := 0
		if s.Drawer == "foam" {
			i = 1
		}
		drawn.Cells[i] = page.Number(s.DrawnG, 0)
		rows = append(rows, drawn)
	}
	if s.Dense.Present && s.Foam.Present {
		both := page.Number(s.KeepBelowC, 0)
		rows = append(rows, kit.Figure{Name: "Both hold ice below", Unit: "°C", Cells: []string{both, both}})
	}
	return rows
}

func ageingRow(name string, at, index float64) kit.Figure {
	return kit.Figure{Name: name + " " + celsius(at), Cells: []string{page.Number(index, 1)}}
}

func ageingFoot(s *cold.Storage) string {
	if math.IsNaN(s.AgeingIndex) {
		return "no ice to coarsen"
	}
	return "ice coarsens " + page.Number(s.AgeingIndex, 1) + " × as fast as at −18 °C"
}
