// Package ui is the window: the bench on which a dessert is designed, the pages
// one click away, the menus and the files.
//
// Values go down (Show…), hands come up (callbacks into the session). Whatever
// a callback changes is only stored; the latch, once a frame, evaluates and
// shows it, so that no drag can outrun the screen.
package ui

import (
	"io/fs"
	"os"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/start"
	"ripplewright/internal/desk/entering"
	"ripplewright/internal/desk/keeping"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/mending"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/desk/rescue"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/journal"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
	"ripplewright/ui/theme"
)

// AppID names the program to the desktop: its settings, and the package that
// FyneApp.toml describes.
const AppID = "org.ripplewright.Ripplewright"

// Setup is what the window needs from outside.
type Setup struct {
	App        fyne.App
	Session    *session.Session
	Demos      []Demo
	Starts     *start.Shelf       // bases to begin with; nil: none
	Tables     fs.FS              // the check tables
	LabelWords onpack.Words       // words of labels in the languages of the places of sale
	Sources    string             // the datasets and their terms, Markdown
	Shelf      *userdata.Shelf    // the library and the maker's own ingredients; nil: the session's library alone
	Prices     *userdata.Prices   // the maker's prices; nil: those of the configuration folder
	Schemas    schemaline.Schemas // where editors of text find the schemas of files; nil: nowhere
	Version    string
	Journal    *journal.Folder // where unsaved work is kept; nil: nowhere
	Drafts     *batch.Drafts   // where what is noted of batches is kept; nil: nowhere
	Rescue     *rescue.Folder  // where reports go when something goes wrong; nil: nowhere
	Notices    []string        // said once, when the window is there
	Ring       func()          // sounds when a timer ends, apart from the window; nil: nothing sounds
	Language   string          // asked for at the start: "de"; "": what the maker has chosen
	Locale     string          // of the system, which decides where nobody has chosen
	Begun      func()          // called when the first frame is on screen; nil: nobody waits for it
	Events     *os.File        // where effects are logged for tests of the real window; nil: nowhere
}

// Demo is a built-in design.
type Demo struct {
	Name   string
	Design design.Design
}

// Window is the program's window.
type Window struct {
	Setup
	win     fyne.Window
	bench   *bench
	pages   [places.Count]page.Page         // nil: nobody has asked for it yet
	leaves  [places.Count]*container.Scroll // what the content has of each, page or bench
	way     places.Way
	content *fyne.Container // the bench and the pages that there are
	signs   *signpost
	status  *widget.Label
	hints   *kit.Hints
	focused fyne.Focusable // when last looked
	menus   *menus
	look    theme.Options

	kitchens  *kitchens.Book
	notebook  *notebook.Book
	mender    *mending.Mender // of the bench; what it is told to leave alone outlives a bench
	keeper    *keeping.Keeper
	elsewhere string           // the path that was said to be open in another window too
	reader    *entering.Reader // of typed lines
	landing   landing          // where a dragged line would go

	seen    uint64
	latency latency
	out     *painting    // that no frame is known to show yet
	soon    func(func()) // runs a function between two turns of the toolkit's loop; nil without one
	posts   posts
	rest    rest
	bells   bells
	quit    func() // ends the toolkit's loop
	net     *net
	latch   *fyne.Animation
	started time.Time
	ticked  bool // a frame has begun
}

// Look at start; the window never asks for more than a small screen has.
const (
	startWidth  = 1280
	startHeight = 860
)

// New returns the window, not yet shown.
func New(s Setup) *Window {
	if s.Shelf == nil {
		s.Shelf = userdata.NewShelf(s.Session.Model().Library(), "")
	}
	if s.Prices == nil {
		path, _ := userdata.PricesPath() // "" without a configuration folder
		s.Prices = userdata.NewPrices(path)
	}
	s.Session.NameSchemas(s.Schemas)
	s.Shelf.NameSchemas(s.Schemas)
	s.Prices.NameSchemas(s.Schemas)
	s.Session.Use(s.Session.Model().Priced(s.Prices.Book()))
	w := &Window{Setup: s, started: time.Now(), quit: s.App.Quit}
	w.net = newNet(w, s.Rescue)
	if w.Journal == nil {
		w.Journal = journal.At("")
	}
	w.keepWork()
	w.restoreLanguage()
	w.restoreLook()
	readOrdinaryFiles()
	w.win = s.App.NewWindow("Ripplewright")
	w.status = widget.NewLabel("")
	w.status.Truncation = fyne.TextTruncateEllipsis
	w.hints = kit.NewHints(w.Say)
	profiles, _ := cold.ProfilesPath() // "" without a configuration folder
	w.kitchens = kitchens.Open(profiles)
	w.kitchens.NameSchemas(s.Schemas)
	w.notebook = notebook.Open(s.Session.File)
	w.notebook.NameSchemas(s.Schemas)
	if s.Drafts != nil {
		w.notebook.KeepDrafts(s.Drafts)
	}
	w.notebook.In(func(name string) cold.Profile { k, _ := w.kitchens.For(name); return k })
	w.kitchens.Teach(w.notebook.Kitchen)
	w.notebook.Tell(w.teach)
	w.teach()
	w.putAside()
	w.recordActs()
	w.restoreUnits()
	w.mender = mending.New(w.Post, w.kitchens.Made, func() { w.bench.remediesKnown() })
	w.layOut()
	w.menus = newMenus(w)
	w.win.Resize(fyne.NewSize(startWidth, startHeight))
	w.win.SetCloseIntercept(mishap.Func(w.close))
	w.win.Canvas().SetOnTypedKey(mishap.With(w.looseKey))
	w.win.SetMaster()
	w.refresh()
	return w
}

// layOut makes the bench and puts it into the window, with the pages that there are.
func (w *Window) layOut() {
	w.bench = newBench(w)
	w.leaves = [places.Count]*container.Scroll{}
	leaves := []fyne.CanvasObject{w.leafOf(places.Bench)}
	for at, p := range w.pages {
		if p != nil {
			leaves = append(leaves, w.leafOf(places.Place(at)))
		}
	}
	w.content = kit.NewLeaves(leaves...)
	w.signs = newSignpost(w)
	w.signs.show(w.way.At())
	w.win.SetContent(container.New(frame{}, w.signs.object, w.bench.strip, w.content, tightly(w.status)))
}

// Run shows the window and returns when it is closed. The error is a panic that
// nothing but the end of the program was left for; the design is kept.
func (w *Window) Run() (err error) {
	defer mishap.Tell(w.net.caught)()
	defer func() {
		if v := recover(); v != nil {
			err = w.net.lost(mishap.Of(v))
		}
	}()
	w.App.Lifecycle().SetOnStarted(func() {
		w.latch = &fyne.Animation{Duration: time.Hour, RepeatCount: fyne.AnimationRepeatForever, Tick: func(float32) { w.tick() }}
		w.latch.Start()
		w.soon = fyne.Do
		mishap.Do(w.greet)
		w.sayWhenPainted()
		w.event("ready after %d ms", time.Since(w.started).Milliseconds())
	})
	w.App.Lifecycle().SetOnEnteredForeground(mishap.Func(w.lookAtDisk))
	w.keeper.Ended(func() { fyne.Do(w.App.Quit) })
	w.quit = func() { w.keeper.Leave(w.App.Quit) }
	w.win.ShowAndRun()
	w.keeper.Look(w.Session)
	return w.keeper.Close()
}

// greet says what went wrong before the window was there. What comes last is on
// top.
func (w *Window) greet() {
	w.offerUnsaved()
	w.tellShelf()
	w.tellPrices()
	w.tellKitchens()
	for _, text := range w.Notices {
		kit.Tell(w.win, say.BeforeYouBegin.String(), text)
	}
}

// keyed is a page that has use for keys which no widget has.
type keyed interface{ TypedKey(*fyne.KeyEvent) }

// looseKey is told of keys that no widget has: a dialog is open, or nothing has
// the keyboard, and the page may know the key.
func (w *Window) looseKey(e *fyne.KeyEvent) {
	if !w.asking() {
		if p, ok := w.shown().(keyed); ok {
			p.TypedKey(e)
		}
		return
	}
	switch e.Name {
	case fyne.KeyEscape:
		kit.Dismiss(w.win.Canvas())
	case fyne.KeyReturn, fyne.KeyEnter:
		kit.Accept(w.win.Canvas())
	}
}

// tick runs once a frame: it takes what workers have to tell, and shows what has
// changed since the last.
func (w *Window) tick() {
	w.painted()
	w.begin()
	if w.posts.serve() {
		w.rest.worked(time.Now())
	}
	mishap.Do(w.show)
	w.keepAlive(time.Now())
	w.giveBack()
	w.keeper.Look(w.Session)
}

// show shows what has changed.
func (w *Window) show() {
	kit.StandIn(w.win.Canvas())
	if f := w.win.Canvas().Focused(); f != w.focused {
		w.focused = f
		w.reveal(f)
	}
	w.hints.Look(w.win.Canvas())
	if w.seen != w.Session.Revision() {
		w.refresh()
		w.sayWhenPainted()
	}
	w.bench.tub.cut.breathe()
}

// reveal scrolls to what has the keyboard; a dialog sees to itself.
func (w *Window) reveal(f fyne.Focusable) {
	if f != nil && !w.asking() {
		kit.Reveal(w.leaves[w.way.At()], f)
	}
}

// teach has the session compute as the batches have shown, where that is news.
func (w *Window) teach() {
	d := w.Design()
	taught := w.notebook.Taught(&d)
	if m := taught.Model(w.Session.Model()); m.Lessons() != w.Session.Model().Lessons() {
		w.Session.Use(m)
	}
}

// refresh evaluates the design and shows it.
func (w *Window) refresh() {
	w.notebook.Follow()
	w.seen = w.Session.Revision()
	w.rest.worked(time.Now())
	w.bench.show()
	if p := w.shown(); p != nil {
		p.Show()
	}
	title := w.Session.Title()
	if w.Session.Dirty() {
		title = say.T(say.NotSaved, title)
	}
	if title = say.HarmlessLine(say.T(say.OfRipplewright, title)); w.win.Title() != title {
		w.win.SetTitle(title)
	}
	if w.menus != nil {
		w.menus.show()
	}
}

// The methods of page.Host.

// Design implements page.Host.
func (w *Window) Design() design.Design { return w.Session.Design() }

// Result implements page.Host.
func (w *Window) Result() *model.Result {
	r, _ := w.Session.Result()
	return r
}

// Model implements page.Host.
func (w *Window) Model() *model.Model { return w.Session.Model() }

// Preview implements page.Host.
func (w *Window) Preview(d design.Design) {
	w.latency.moved()
	w.Session.Preview(d)
}

// Commit implements page.Host. Where the widget that has the keyboard says that
// its keys have made the change, keys in a row are one step of undo.
func (w *Window) Commit(d design.Design, step string) {
	w.latency.moved()
	var keys any
	if f, ok := w.win.Canvas().Focused().(interface{ ByKeys() bool }); ok && f.ByKeys() {
		keys = f
	}
	w.Session.CommitKeys(d, step, keys)
	w.event("commit %s", step)
}

// Post implements page.Host.
func (w *Window) Post(f func()) { w.posts.add(f) }

// Window implements page.Host.
func (w *Window) Window() fyne.Window { return w.win }

// Say implements page.Host.
func (w *Window) Say(text string) { w.status.SetText(text) }
