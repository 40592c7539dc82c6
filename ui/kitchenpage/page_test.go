package kitchenpage

import (
	"fmt"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/stove"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// kitchen is the page with a clock that the test turns.
type kitchen struct {
	*Page
	*pagetest.Press
	at     time.Time
	events []string
	rung   chan struct{}
}

func open(t *testing.T, d design.Design, look theme.Options) *kitchen {
	k := &kitchen{Press: pagetest.NewPress(t, d, look), at: time.Date(2026, 11, 28, 9, 0, 0, 0, time.UTC), rung: make(chan struct{}, 9)}
	k.Page = New(k.Press, kitchens.Open(""), Setup{Now: func() time.Time { return k.at },
		Told: func(event string, args ...any) { k.events = append(k.events, fmt.Sprintf(event, args...)) },
		Ring: func() { k.rung <- struct{}{} }})
	k.Open(k.Page)
	k.Until(func() bool { return k.now.Cold != nil })
	t.Cleanup(func() {
		if k.still != nil {
			k.still()
		}
	})
	return k
}

func (k *kitchen) key(name fyne.KeyName) {
	if f := k.Win.Canvas().Focused(); f != nil {
		f.TypedKey(&fyne.KeyEvent{Name: name})
		return
	}
	k.TypedKey(&fyne.KeyEvent{Name: name})
}

func (k *kitchen) goTo(code process.StepCode) {
	for k.walk.Go(k.steps(), -1) {
	}
	for k.step().Code != code {
		require.True(k.T, k.walk.Go(k.steps(), 1), "no step %s", code)
	}
	k.show()
}

func TestSpaceAndArrowsLeadThroughTheSteps(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	n := len(k.steps())
	assert.Equal(t, fmt.Sprintf("Step 1 of %d", n), k.place.Text)
	assert.True(t, k.back.Disabled())
	k.key(fyne.KeySpace)
	assert.Equal(t, fmt.Sprintf("Step 2 of %d", n), k.place.Text)
	assert.Contains(t, k.events, fmt.Sprintf("kitchen step=2 of=%d code=%s", n, k.steps()[1].Code))
	k.key(fyne.KeyRight)
	k.key(fyne.KeyLeft)
	assert.Equal(t, fmt.Sprintf("Step 2 of %d", n), k.place.Text)
	k.Win.Canvas().Unfocus() // a click beside everything
	k.key(fyne.KeySpace)
	assert.Equal(t, fmt.Sprintf("Step 3 of %d", n), k.place.Text)
	for range n {
		k.key(fyne.KeySpace)
	}
	assert.Equal(t, fmt.Sprintf("Step %d of %d", n, n), k.place.Text, "the last stays the last")
	assert.True(t, k.next.Disabled())
}

func TestEachStepSaysWhatGoesIn(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	k.goTo(process.BoilSyrup)
	assert.Contains(t, k.things.Text, "sugar")
	assert.Contains(t, k.things.Text, "water")
	assert.Contains(t, k.text.Text, "boil without stirring")
	assert.False(t, k.reading.fields.Hidden)
	k.goTo(process.Rest)
	assert.Empty(t, k.things.Text)
	assert.True(t, k.reading.fields.Hidden)
}

func TestTimersGoOnWhenThePageIsLeft(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	k.goTo(process.Rest)
	assert.Equal(t, "4:00:00", k.clock.face.Text())
	test.Tap(k.clock.main)
	k.goTo(process.Cook)
	test.Tap(k.clock.main)
	k.at = k.at.Add(time.Minute)
	k.looked()
	assert.Contains(t, k.clock.others.Text(), "Rest 3:59:00")
	test.Tap(k.clock.main)
	assert.Equal(t, "Go on", k.clock.main.Text())
	k.key(fyne.KeyT)
	assert.Equal(t, "Pause", k.clock.main.Text())

	k.Leave()
	k.at = k.at.Add(2 * time.Hour)
	test.AssertNotificationSent(t, fyne.NewNotification(k.Now.Name, "“Cook”: the time is up."), k.looked)
	assert.Equal(t, "“Cook”: the time is up.", k.Said)
	assert.Contains(t, k.events, "kitchen timer over code=cook")
	<-k.rung // once, and it does not hold up the page
	k.Show()
	assert.Equal(t, "Time is up", k.clock.main.Text())
	assert.True(t, k.clock.frame.Visible())
	assert.True(t, k.clock.alarm.Hidden, "it is this step's")
	k.goTo(process.HeatMilk)
	assert.True(t, k.clock.frame.Visible())
	test.Tap(k.clock.alarm)
	assert.Equal(t, process.Cook, k.step().Code)
	assert.Contains(t, k.clock.face.Text(), "+")
	test.Tap(k.clock.main)
	assert.False(t, k.clock.frame.Visible())
	state, _ := k.timers.Look(process.Cook)
	assert.Equal(t, stove.Idle, state)
	assert.NotNil(t, k.still, "the other one runs")
	k.goTo(process.Rest)
	test.Tap(k.clock.clear)
	assert.Nil(t, k.still, "nothing is looked at for nothing")
}

func TestAReadingChangesWhatFollowsAndIsKeptAsOneStep(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	k.goTo(process.BoilSyrup)
	was, lines := k.Now, k.Found.Lines
	k.probe(was.Foam.Syrup.CookTemperatureC + 6)
	assert.True(t, k.Now.Equal(was), "nothing is kept yet")
	require.NotNil(t, k.trial)
	assert.Contains(t, k.reading.came.Text, "Initial freezing point")
	assert.Contains(t, k.place.Text, "changed by the reading")
	k.goTo(process.PourIn)
	assert.Contains(t, k.place.Text, "changed by the reading")
	assert.False(t, k.reading.answer.Hidden, "it is in view until it is kept or put back")

	k.Leave()
	k.Show()
	require.NotNil(t, k.trial, "it waits while another page is looked at")
	test.Tap(k.reading.drop)
	assert.Nil(t, k.trial)
	assert.Equal(t, was.Foam.Syrup.CookTemperatureC, k.field(process.SyrupC).Value())

	k.probe(was.Foam.Syrup.CookTemperatureC + 6)
	test.Tap(k.reading.keep)
	assert.Equal(t, []string{"syrup's temperature"}, k.Steps)
	for _, l := range k.Found.Lines {
		for _, o := range lines {
			if o.Part == l.Part && o.Index == l.Index {
				assert.InDelta(t, o.Grams, l.Grams, 1e-9, "what is weighed out stays")
			}
		}
	}
	assert.Equal(t, was.Foam.Syrup.CookTemperatureC+6, k.Now.Foam.Syrup.CookTemperatureC)
	assert.Nil(t, k.trial)
	assert.True(t, k.reading.answer.Hidden)
	assert.Equal(t, process.PourIn, k.step().Code, "the cook stays where they are")
}

func TestWhatTheFoamReadsIsOfThisBatch(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	k.goTo(process.PourIn)
	k.read(process.FoamC, 66)
	require.NotNil(t, k.trial)
	test.Tap(k.reading.keep)
	assert.Empty(t, k.Steps, "no design knows it")
	assert.Contains(t, k.text.Text, "A thermometer showed 66 °C")
	k.Leave()
	k.Show()
	assert.Contains(t, k.text.Text, "A thermometer showed 66 °C")
	d := k.Now
	d.Foam.Syrup.CookTemperatureC = 121
	k.Set(d)
	k.Show()
	assert.NotContains(t, k.text.Text, "A thermometer showed", "another foam")
}

// probe types a reading.
func (k *kitchen) probe(c float64) {
	k.read(process.SyrupC, c)
}

func (k *kitchen) field(of process.Reading) *kit.NumberField {
	for _, a := range k.reading.asks {
		if a.of == of {
			return a.field
		}
	}
	return nil
}

func (k *kitchen) read(of process.Reading, v float64) {
	e := k.field(of).Focusable()
	k.Win.Canvas().Focus(e)
	e.(interface{ SetText(string) }).SetText(fmt.Sprint(v))
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func TestAnEmptyDesignIsSaidToBeOne(t *testing.T) {
	d := design.New()
	d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil, nil
	h := pagetest.NewPress(t, d, theme.Options{})
	p := New(h, kitchens.Open(""), Setup{Now: time.Now, Told: func(string, ...any) {}})
	h.Open(p)
	assert.Contains(t, p.title.Text, "nothing to make")
	assert.True(t, p.next.Disabled())
}

func TestThePageKeepsWithinASmallWindow(t *testing.T) {
	for name, look := range pagetest.Dresses {
		k := open(t, market.Honey(), look)
		k.goTo(process.BoilSyrup)
		k.probe(124)
		test.Tap(k.clock.main)
		k.at = k.at.Add(75 * time.Second)
		k.looked()
		k.Win.Resize(fyne.NewSize(1280, 560))
		k.KeepLook("kitchen-boil-" + name)
		size := k.Page.Object().MinSize()
		assert.LessOrEqual(t, size.Width, float32(1264), name)
		assert.LessOrEqual(t, size.Height, float32(560), name)
		k.goTo(process.HeatMilk)
		k.KeepLook("kitchen-heat-" + name)
	}
}
