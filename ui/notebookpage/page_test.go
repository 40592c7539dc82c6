package notebookpage

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
	"ripplewright/ui/page"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// desk is the page with a notebook in a folder of the test.
type desk struct {
	*Page
	*pagetest.Press
}

func open(t *testing.T, look theme.Options) *desk {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	file, err := designfile.Save(path, nil, market.Honey(), designfile.SaveOptions{})
	require.NoError(t, err)
	return openOn(t, look, notebook.Open(func() *designfile.File { return file }))
}

func openOn(t *testing.T, look theme.Options, book *notebook.Book) *desk {
	d := &desk{Press: pagetest.NewPress(t, market.Honey(), look)}
	d.Page = New(d.Press, book, kitchens.Open(""), func() time.Time { return time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC) },
		func(then func(string)) { then("/quay/cut.jpg") }, func(string, ...any) {})
	d.Open(d.Page)
	d.Until(func() bool { return d.expected != batch.Forecast{} })
	return d
}

func (d *desk) field(path string) *field {
	for i := range d.form.fields {
		if d.form.fields[i].Path == path {
			return d.form.fields[i]
		}
	}
	return nil
}

func TestABatchIsWrittenDownFromThePage(t *testing.T) {
	d := open(t, theme.Options{})
	assert.Contains(t, d.field("freezer_c").hint.Text, "forecast −18")
	d.book.Keep(process.FoamCupG, 91, d.Now)
	d.Page.Show()
	assert.Equal(t, 91., d.field("foam.cup_g").number.Value(), "kept in the kitchen")
	e := d.field("freezer_c").number.Focusable()
	d.Win.Canvas().Focus(e)
	e.(interface{ SetText(string) }).SetText("-15.5")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	d.field("ate.icy").choice.SetSelected("icy")
	d.form.words.SetText("Windy")
	test.Tap(d.form.write)
	d.Until(func() bool { return len(d.book.Notes.Batches) == 1 })
	b := d.book.Notes.Batches[0]
	assert.Equal(t, batch.Of(-15.5), b.FreezerC)
	assert.Equal(t, batch.Of(91), b.Foam.CupG)
	assert.Equal(t, "icy", b.Ate.Icy)
	assert.Equal(t, "Windy", b.Words)
	assert.False(t, b.RoomC.Known)
	assert.Contains(t, d.Said, "2026-11-28 is written down")
	assert.Empty(t, d.form.words.Text)

	d.form.which.SetSelected("2026-11-28")
	d.field("ate.hardness").choice.SetSelected("firm")
	test.Tap(d.form.write)
	d.Until(func() bool { return d.book.Notes.Batches[0].Ate.Hardness == "firm" })
	require.Len(t, d.book.Notes.Batches, 1, "it is added to")
	assert.Equal(t, "icy", d.book.Notes.Batches[0].Ate.Icy)

	d.taught.pick(int(learn.Ice))
	d.taught.factor = learn.Ice
	d.taught.on.SetChecked(true)
	d.taught.turn(false)
	assert.Equal(t, []string{"ice"}, d.book.Notes.Off)
	p := d.book.Taught(&d.Now)
	assert.False(t, p.Learnt(learn.Ice))
	assert.True(t, p.Learnt(learn.FreezerK))
}

// What the design expects stands pale in an empty field, counts for nothing, and is noted by
// a touch.
func TestWhatTheDesignExpectsIsNotedByATouchAlone(t *testing.T) {
	d := open(t, theme.Options{})
	freezer, cup, ate, pan := d.field("freezer_c"), d.field("foam.cup_g"), d.field("ate.hardness"), d.field("syrup.weighed_g")
	d.Until(func() bool { return freezer.tick.Visible() })
	assert.True(t, freezer.number.PlanShown())
	assert.True(t, freezer.hint.Hidden, "the number stands in the field")
	assert.True(t, ate.tick.Visible())
	assert.False(t, pan.tick.Visible(), "nobody knows the pan")
	d.form.take()
	assert.Equal(t, batch.Batch{}, d.book.Draft, "nothing is noted that nobody has said")

	test.Tap(freezer.tick)
	test.Tap(ate.tick)
	assert.Equal(t, batch.Batch{FreezerC: batch.Of(-18), Ate: batch.Ate{Hardness: ate.choice.Selected}}, d.book.Draft)
	assert.NotEmpty(t, ate.choice.Selected)
	assert.False(t, freezer.tick.Visible())
	assert.False(t, freezer.hint.Hidden, "the forecast stands beside what is noted")
	assert.True(t, cup.tick.Visible())

	d.form.forget()
	assert.Equal(t, batch.Batch{}, d.book.Draft)
	assert.True(t, freezer.tick.Visible())
}

// What is noted is there again after the window was lost, beyond the few fields too, and
// no more once it is cleared.
func TestWhatIsNotedOutlivesTheWindow(t *testing.T) {
	file, err := designfile.Save(filepath.Join(t.TempDir(), "quay.yaml"), nil, market.Honey(), designfile.SaveOptions{})
	require.NoError(t, err)
	drafts := batch.DraftsAt(t.TempDir())
	again := func() *desk {
		book := notebook.Open(func() *designfile.File { return file })
		book.KeepDrafts(drafts)
		return openOn(t, theme.Options{}, book)
	}
	d := again()
	assert.False(t, d.form.rest.Visible(), "a few fields first")
	d.book.Keep(process.FoamCupG, 91, d.Now)
	d.Page.Show()
	d.form.words.SetText("Windy")
	d.field("ate.icy").choice.SetSelected("icy")
	d.field("custard.stirs_min").text.SetText("30; 60")
	d.form.pick()
	want := d.book.Draft
	require.Equal(t, []string{"/quay/cut.jpg"}, want.Photographs)
	require.Eventually(t, func() bool { b := drafts.Of(file.Path()); return len(b.Photographs) == 1 }, time.Minute, 10*time.Millisecond)

	d = again()
	assert.Equal(t, want, d.book.Draft)
	assert.Equal(t, 91., d.field("foam.cup_g").number.Value())
	assert.Equal(t, "icy", d.field("ate.icy").choice.Selected)
	assert.Equal(t, "30; 60", d.field("custard.stirs_min").text.Text)
	assert.Equal(t, "Windy", d.form.words.Text)
	assert.True(t, d.form.rest.Visible(), "what is filled in is seen")
	d.form.forget()
	assert.Zero(t, d.book.Draft)
	assert.Empty(t, d.form.words.Text)
	require.Eventually(t, func() bool { b := drafts.Of(file.Path()); return b.Blank() }, time.Minute, 10*time.Millisecond)
}

func TestThePageKeepsWithinASmallWindow(t *testing.T) {
	for name, look := range pagetest.Dresses {
		d := open(t, look)
		s := d.Object().MinSize()
		assert.LessOrEqual(t, s.Width, float32(1280), name)
		assert.LessOrEqual(t, s.Height, float32(700), name)
	}
}

// A US cup is weighed, and its file's is larger.
func TestACupIsNotedFromTheMakersCup(t *testing.T) {
	page.Reads = say.Customary
	t.Cleanup(func() { page.Reads = say.Usual })
	d := open(t, theme.Options{})
	e := d.field("foam.cup_g").number.Focusable()
	d.Win.Canvas().Focus(e)
	e.(interface{ SetText(string) }).SetText("75")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	d.form.take()
	assert.InDelta(t, 79.25, d.book.Draft.Foam.CupG.Value, 0.01)
}

// The wheel scrolls the form over its fields, and the words within their own.
func TestTheWheelScrollsTheFormAndTheWords(t *testing.T) {
	d := open(t, theme.Options{})
	d.form.open(true)
	d.form.words.SetText(strings.Repeat("a line\n", 30))
	d.Win.Resize(fyne.NewSize(1000, 500))
	left := d.object.(*container.Split).Leading.(*container.Scroll)
	turn := func(o fyne.CanvasObject) {
		at := fyne.CurrentApp().Driver().AbsolutePositionForObject(o)
		test.Scroll(d.Win.Canvas(), at.AddXY(10, o.Size().Height/2), 0, -20)
	}
	turn(d.field("syrup.weighed_g").number)
	assert.EqualValues(t, 20, left.Offset.Y)
	left.ScrollToBottom()
	at := left.Offset.Y
	left.ScrollToOffset(fyne.NewPos(0, at-30))
	turn(d.form.words)
	assert.EqualValues(t, at-30, left.Offset.Y, "its own lines scroll")
}
