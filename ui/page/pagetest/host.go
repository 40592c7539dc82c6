// Package pagetest is what the tests of the pages share: a program around a
// page, and ways to find what a page shows.
package pagetest

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
)

// A Host is a program around a page. What is posted waits until the test, on
// its own goroutine as the window would, lets it run.
type Host struct {
	T      testing.TB
	With   *model.Model
	Now    design.Design
	Found  model.Result
	Steps  []string // the names of what was committed
	Said   string   // the status line
	Posted chan func()
	Win    fyne.Window
}

// Set makes d the design, and evaluates it.
func (h *Host) Set(d design.Design) {
	r, err := h.With.Evaluate(d)
	require.NoError(h.T, err)
	h.Now, h.Found = d, r
}

func (h *Host) Design() design.Design { return h.Now }

func (h *Host) Result() *model.Result { return &h.Found }

func (h *Host) Model() *model.Model { return h.With }

func (h *Host) Preview(d design.Design) { h.Set(d) }

func (h *Host) Commit(d design.Design, step string) { h.Set(d); h.Steps = append(h.Steps, step) }

func (h *Host) Post(f func()) { h.Posted <- f }

func (h *Host) Window() fyne.Window { return h.Win }

func (h *Host) Say(s string) { h.Said = s }

func (h *Host) Export(string, func(string) error) {}

// Until runs what is posted until done says so.
func (h *Host) Until(done func() bool) {
	h.T.Helper()
	late := time.After(time.Minute)
	for !done() {
		select {
		case f := <-h.Posted:
			f()
		case <-late:
			h.T.Fatal("it did not come about within a minute")
		}
	}
}

// NewHost returns a program with d open in a window of its own.
func NewHost(t testing.TB, d design.Design) *Host {
	h := &Host{T: t, With: model.New(market.Library(t)), Posted: make(chan func(), 1000)}
	h.Win = test.NewWindow(container.NewWithoutLayout())
	t.Cleanup(h.Win.Close)
	h.Set(d)
	return h
}

// All returns every object of one kind within o that can be seen.
func All[T fyne.CanvasObject](o fyne.CanvasObject) []T {
	var found []T
	if !o.Visible() {
		return nil
	}
	if w, ok := o.(T); ok {
		found = append(found, w)
	}
	var inner []fyne.CanvasObject
	switch x := o.(type) {
	case *fyne.Container:
		inner = x.Objects
	case fyne.Widget:
		inner = test.WidgetRenderer(x).Objects()
	}
	for _, i := range inner {
		found = append(found, All[T](i)...)
	}
	return found
}

// Button returns the button of that text within o.
func Button(t *testing.T, o fyne.CanvasObject, text string) *kit.Button {
	t.Helper()
	for _, b := range All[*kit.Button](o) {
		if b.Text == text {
			return b
		}
	}
	require.FailNow(t, "no button "+text)
	return nil
}

// Texts is all the words on screen.
func Texts(o fyne.CanvasObject) string {
	var b strings.Builder
	for _, l := range All[*widget.RichText](o) { // labels are made of them
		b.WriteString(l.String() + "\n")
	}
	return b.String()
}
