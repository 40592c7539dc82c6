// Package coldpage is the page of the times in the cold.
package coldpage

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/planning"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of the cold: an answer a tile, and for the tile chosen the
// tub as a picture in time, its curves, the figures and what can be changed.
type Page struct {
	host     page.Host
	kitchens *kitchens.Book
	planner  *planning.Planner
	told     func(*cold.Answer)
	lead     func(model.Warning) // to what causes it in the recipe; nil: nowhere

	kitchen cold.Profile // the design's, or what a hand is making of it
	moving  bool
	asked   planning.Job
	from    *model.Model // whose result was asked for
	state   planState
	since   time.Time
	answer  *cold.Answer  // nil before the first
	ice     *planning.Ice // of the newest plan that it is known of; nil before the first
	of      planning.Job  // what answer is of

	bar      *kitchenBar
	views    []*view
	current  coldview.Question
	stage    *stage
	details  *fyne.Container
	split    *container.Split
	replaced coldview.Replaced
	object   fyne.CanvasObject
	status   *widget.Label
	busy     *fyne.Container
	progress *widget.ProgressBar
	again    *kit.Button
}

// planState is what the plan asked for has come to.
type planState int

const (
	planNone planState = iota
	planRunning
	planDone
	planFailed
	planCancelled
)

// patience is how long a plan may take before its progress is shown: a bar
// that flashes tells nothing.
const patience = 150 * time.Millisecond

// New returns the page. told, which may be nil, gets each answer shown.
func New(h page.Host, k *kitchens.Book, told func(*cold.Answer)) *Page {
	p := &Page{host: h, kitchens: k, planner: planning.NewPlanner(h.Post), told: told, replaced: coldview.Replaced{}}
	p.planner.Done, p.planner.Progress, p.planner.Iced = p.done, p.showProgress, p.iced
	p.bar = newKitchenBar(p)
	p.stage = newStage(h)
	p.views = p.newViews()
	tiles := container.NewGridWithColumns(len(p.views))
	for _, v := range p.views {
		v.tile.OnTapped = func() { p.choose(v.Question) }
		tiles.Add(v.tile)
	}

	p.status = widget.NewLabelWithStyle("", fyne.TextAlignTrailing, fyne.TextStyle{})
	p.progress = page.Progress()
	stop := kit.NewButton(say.T("Cancel"), p.stop)
	p.busy = container.NewBorder(nil, nil, nil, stop, p.progress)
	p.busy.Hide()
	p.again = kit.NewButton(say.T("Compute again"), func() { p.state = planNone; p.Show() })
	p.again.Hide()
	right := container.NewStack(p.busy, container.NewHBox(layout.NewSpacer(), p.status, p.again))

	var scrolls []fyne.CanvasObject
	for _, v := range p.views {
		scrolls = append(scrolls, v.scroll)
	}
	p.details = kit.NewLeaves(scrolls...)
	split := container.NewHSplit(p.stage.object, p.details)
	split.Offset = 0.66
	p.split = split
	p.object = container.NewBorder(container.NewVBox(container.NewBorder(nil, nil, p.bar.row, nil, right), p.bar.problem, tiles), nil, nil, nil, split)
	k.Tell(func() {
		if p.state != planNone {
			p.Show()
		}
	})
	p.choose(coldview.Counter)
	return p
}

// Lead has the page hand what comes of the recipe to f, which goes to what causes it.
func (p *Page) Lead(f func(model.Warning)) { p.lead = f }

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {
	p.stage.sleep()
	p.planner.Stop()
	if p.state == planRunning {
		p.become(planNone, "")
	}
}

// Show implements page.Page.
func (p *Page) Show() {
	p.stage.wake()
	if !p.moving {
		k, said := p.kitchens.For(p.host.Design().Kitchen.Profile)
		p.kitchen = k
		p.bar.show(said)
	}
	for _, v := range p.views {
		v.showLevers()
	}
	p.ask()
}

// ask has the plan computed, unless it is the one asked for last.
func (p *Page) ask() {
	d := p.host.Design()
	k := p.kitchens.Taught(d, p.kitchen)
	same := p.asked.Design.Equal(d) && p.asked.Kitchen == k && p.from == p.host.Model()
	if same && p.state != planNone {
		return
	}
	if p.state != planRunning {
		p.since = time.Now()
	}
	r := *p.host.Result() // the session's is overwritten by the next
	p.asked, p.from = planning.Job{Design: d, Result: &r, Kitchen: k}, p.host.Model()
	p.planner.Ask(p.asked)
	p.become(planRunning, say.T("Computing…"))
}

// become shows how the plan stands.
func (p *Page) become(s planState, word string) {
	p.state = s
	if s != planRunning {
		p.busy.Hide()
		p.status.Show()
	}
	if p.again.Hide(); s == planCancelled {
		p.again.Show()
	}
	if p.status.Text != word {
		p.status.SetText(word)
	}
}

func (p *Page) showProgress(done float64) {
	if p.state != planRunning || time.Since(p.since) < patience {
		return
	}
	p.progress.SetValue(done)
	p.status.Hide()
	p.busy.Show()
}

// stop is the Cancel button.
func (p *Page) stop() {
	p.planner.Stop()
	p.become(planCancelled, say.StaleTimes.String())
}

// done takes an answer, of the newest request or of one just before it.
func (p *Page) done(job planning.Job, a *cold.Answer, took time.Duration, err error) {
	newest := job.Result == p.asked.Result
	switch {
	case err != nil:
		p.answer, p.ice = nil, nil
		p.become(planFailed, "")
		p.bar.show(say.Sentence(say.Flaw(err)))
	case newest:
		p.answer, p.of = a, job
		p.become(planDone, say.ComputedIn(page.Reads, took))
	default:
		p.answer, p.of = a, job
	}
	p.showAnswer()
	if p.told != nil && p.answer != nil && newest {
		p.told(a)
	}
}

// choose turns to the view of q.
func (p *Page) choose(q coldview.Question) {
	p.stage.stop()
	p.current = q
	kit.Turn(p.details, p.views[q].scroll)
	p.split.Refresh()
	p.showAnswer()
}

// showAnswer puts the latest answer into the tiles and the view chosen.
func (p *Page) showAnswer() {
	for _, v := range p.views {
		v.showTile(p.brief(v.Question), v.Question == p.current)
	}
	if p.answer == nil {
		p.stage.clear()
		return
	}
	if p.views[p.current].showAnswer(p.answer) {
		p.split.Refresh()
	}
	p.stage.put(p.current, p.scene(p.current))
}

// change lets f change the kitchen while a hand still moves something.
func (p *Page) change(f func(*cold.Profile)) {
	p.moving = true
	f(&p.kitchen)
	p.Show()
}

// keep writes the kitchen to the maker's file.
func (p *Page) keep(step string) {
	p.moving = false
	if err := p.kitchens.Keep(p.kitchen, p.kitchen.Name); err != nil {
		kit.Tell(p.host.Window(), say.T("This did not work"), say.Sentence(say.Flaw(err)))
		p.Show()
		return
	}
	p.host.Say(say.KitchenSaved(p.kitchen.Name, step))
}
