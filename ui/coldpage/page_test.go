package coldpage

import (
	"context"
	"fmt"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/planning"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// coldPage is the page over a fake program, its first answer there, its own
// kitchens in a folder of the test.
func coldPage(t testing.TB, d design.Design, look theme.Options) (*Page, *pagetest.Host) {
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(theme.New(look))
	h := pagetest.NewHost(t, d)
	p := New(h, kitchens.Open(filepath.Join(t.TempDir(), "profiles.yaml")), nil)
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 720))
	p.Show()
	h.Until(func() bool { return p.state == planDone })
	return p, h
}

var daylight = theme.Options{Variant: theme.Light}

// slides are the sliders of a view, from the top.
func slides(v *view) []*kit.Slide {
	var list []*kit.Slide
	for _, o := range v.box.Objects {
		if c, ok := o.(*fyne.Container); ok && len(c.Objects) == 1 {
			if s, ok := c.Objects[0].(*kit.Slide); ok {
				list = append(list, s)
			}
		}
	}
	return list
}

func strike(f fyne.Focusable, keys ...fyne.KeyName) {
	for _, k := range keys {
		f.TypedKey(&fyne.KeyEvent{Name: k})
	}
}

// settle waits until nothing is computed any more, and runs what was posted.
func settle(h *pagetest.Host, p *planning.Planner) {
	for p.Busy() {
		time.Sleep(time.Millisecond)
	}
	for len(h.Posted) > 0 {
		(<-h.Posted)()
	}
}

func plan(t *testing.T, h *pagetest.Host, k cold.Profile) cold.Answer {
	t.Helper()
	a, err := cold.Plan(context.Background(), h.Now, &h.Found, k, cold.Options{})
	require.NoError(t, err)
	return a
}

func tile(v *view) kit.TileView {
	said, _ := v.tile.View()
	return said
}

func TestTheTilesSayWhatThePlanFinds(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	a := plan(t, h, cold.Default())
	assert.Equal(t, page.Reads.Duration(a.StillFreeze.Dense.ReadyMinutes.Value), tile(p.views[coldview.Custard]).Value)
	assert.Equal(t, page.Reads.Duration(a.StillFreeze.Foam.ReadyMinutes.Value), tile(p.views[coldview.Foam]).Value)
	assert.Equal(t, page.Reads.Duration(60*a.Harden.Hours.Value), tile(p.views[coldview.Harden]).Value)
	assert.Equal(t, page.Reads.DurationSpan(a.Counter.FromMinutes.Value, a.Counter.WholeMinutes.Value), tile(p.views[coldview.Counter]).Value)
	assert.Equal(t, page.Reads.DurationSpan(a.Fridge.FromMinutes.Value, a.Fridge.WholeMinutes.Value), tile(p.views[coldview.Fridge]).Value)
	assert.Equal(t, "no water moves", tile(p.views[coldview.Storage]).Value)
	assert.Contains(t, tile(p.views[coldview.Counter]).Foot, page.Reads.Duration(a.Counter.ToMinutes.Value))
}

func TestThePictureIsThePlansAtTheTimeChosen(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	a := plan(t, h, cold.Default())
	p.choose(coldview.Harden)
	run := &a.Harden.Run
	frame := run.Frames[len(run.Frames)/2]
	p.stage.at(frame.AtMinutes)
	rows := p.stage.rows
	require.Len(t, rows, run.Upward+1)
	require.Len(t, rows[0], run.Outward+1)
	// Amid the tub a corner lies between its four cells.
	i, j := run.Outward/2, run.Upward/2
	cell := func(i, j int) float64 { return frame.C[j*run.Outward+i] }
	assert.InDelta(t, (cell(i, j)+cell(i-1, j)+cell(i, j-1)+cell(i-1, j-1))/4, rows[run.Upward-j][i], 1e-9)
	m := run.At(frame.AtMinutes)
	for _, c := range []float64{m.CoreC, m.MeanC, m.RingC, m.WallC} {
		assert.Contains(t, p.stage.caption.Text, page.Number(c, 1))
	}
}

func TestTheTimeFollowsTheHandOnceAFrame(t *testing.T) {
	p, _ := coldPage(t, market.Honey(), daylight)
	p.stage.at(0)
	strike(p.stage.time.Focusable(), fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	assert.Contains(t, p.stage.caption.Text, "0 min", "work for a frame that nobody will see")
	p.stage.hand.tick()
	assert.Contains(t, p.stage.caption.Text, "3 min")
}

func TestTheStirsAreThePlans(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	a := plan(t, h, cold.Default())
	p.choose(coldview.Custard)
	require.NotEmpty(t, a.StillFreeze.Dense.Stirs)
	plot := p.stage.curves
	require.Len(t, plot.Rules, len(a.StillFreeze.Dense.Stirs))
	for i, s := range a.StillFreeze.Dense.Stirs {
		assert.InDelta(t, s.AtMinutes/60, plot.Rules[i].At, 1e-9)
	}
}

func TestOnlyTheNewestRequestIsShownInTheEnd(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	for _, c := range []float64{-12, -11, -10} {
		d := h.Now
		d.Serving.TemperatureC = c
		h.Set(d)
		p.Show()
	}
	h.Until(func() bool { return p.state == planDone })
	settle(h, p.planner)
	assert.Equal(t, -10.0, p.of.Design.Serving.TemperatureC)
	assert.Equal(t, -10.0, p.asked.Design.Serving.TemperatureC)
	assert.Equal(t, planDone, p.state)
}

func TestTheSameDesignIsNotComputedAgain(t *testing.T) {
	p, _ := coldPage(t, market.Honey(), daylight)
	was := p.answer
	p.Show()
	assert.Equal(t, planDone, p.state)
	assert.Same(t, was, p.answer)
}

func TestCancelKeepsTheOldFiguresAndSaysSo(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	was := p.answer
	d := h.Now
	d.Tubs.VolumeML = 900
	h.Set(d)
	p.Show()
	require.Equal(t, planRunning, p.state)
	p.stop()
	settle(h, p.planner)
	assert.Equal(t, planCancelled, p.state)
	assert.Same(t, was, p.answer)
	assert.Contains(t, p.status.Text, "belong to an earlier design")
	require.True(t, p.again.Visible())
	test.Tap(p.again)
	h.Until(func() bool { return p.state == planDone })
	assert.Equal(t, 900.0, p.of.Design.Tubs.VolumeML)
	assert.False(t, p.again.Visible())
}

func TestLeavingStopsAndComingBackComputes(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	d := h.Now
	d.Tubs.VolumeML = 900
	h.Set(d)
	p.Show()
	p.stage.playOrStop()
	p.Leave()
	settle(h, p.planner)
	assert.Equal(t, 500.0, p.of.Design.Tubs.VolumeML)
	assert.Nil(t, p.stage.playing.stopped, "it plays on out of sight")
	p.Show()
	h.Until(func() bool { return p.state == planDone })
	assert.Equal(t, 900.0, p.of.Design.Tubs.VolumeML)
}

func TestProgressShowsOnceAPlanTakesLong(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	d := h.Now
	d.Tubs.VolumeML = 900
	h.Set(d)
	p.Show()
	p.showProgress(0.2)
	assert.False(t, p.busy.Visible(), "a bar that flashes tells nothing")
	p.since = p.since.Add(-time.Second)
	p.showProgress(0.4)
	assert.True(t, p.busy.Visible())
	assert.Equal(t, 0.4, p.progress.Value)
	h.Until(func() bool { return p.state == planDone })
	assert.False(t, p.busy.Visible())
}

func TestAnEmptyTubIsSaidInWords(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	d := h.Now
	d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil, nil
	h.Set(d)
	p.Show()
	h.Until(func() bool { return p.state == planFailed })
	assert.Contains(t, p.bar.problem.Text, "empty")
	assert.Equal(t, "–", tile(p.views[coldview.Counter]).Value)
	h.Set(market.Honey())
	p.Show()
	h.Until(func() bool { return p.state == planDone })
	assert.False(t, p.bar.problem.Visible())
}

func TestALeverChangesTheKitchenAndItsFile(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	before := p.answer.Harden.Hours.Value
	p.choose(coldview.Harden)
	strike(slides(p.views[coldview.Harden])[0].Focusable(), fyne.KeyLeft, fyne.KeyLeft)
	h.Until(func() bool { return p.state == planDone })
	assert.Equal(t, -19.0, p.of.Kitchen.Freezer.AirC)
	assert.Less(t, p.answer.Harden.Hours.Value, before)
	own, err := cold.LoadProfiles(p.kitchens.Path())
	require.NoError(t, err)
	require.Len(t, own, 1)
	assert.Equal(t, -19.0, own[0].Freezer.AirC)
	assert.Equal(t, "Home freezer", own[0].Name)
	assert.Empty(t, h.Steps, "a kitchen is not the design's")
	// Reset brings the built-in one back.
	assert.False(t, p.bar.remove.Disabled())
	p.bar.removeNow("Home freezer")
	h.Until(func() bool { return p.state == planDone })
	assert.Equal(t, cold.Default(), p.of.Kitchen)
	assert.True(t, p.bar.remove.Disabled())
}

func TestAnotherVesselHasAnotherDepth(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	p.change(func(k *cold.Profile) { k.Layer.Form, k.Layer.DepthMM = cold.FormBowl, 0 })
	p.keep("bowl")
	h.Until(func() bool { return p.state == planDone })
	p.choose(coldview.Custard)
	assert.InDelta(t, p.answer.StillFreeze.Dense.Vessel.HeightMM, slides(p.views[coldview.Custard])[2].Value(), 0.5)
	p.choose(coldview.Foam)
	assert.InDelta(t, p.answer.StillFreeze.Foam.Vessel.HeightMM, slides(p.views[coldview.Foam])[2].Value(), 0.5)
}

func TestTheKitchenOfTheDesignIsUsed(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	p.bar.choose.SetSelected("Summer stall")
	assert.Equal(t, []string{"kitchen"}, h.Steps)
	assert.Equal(t, "Summer stall", h.Now.Kitchen.Profile)
	p.Show()
	h.Until(func() bool { return p.state == planDone })
	assert.Equal(t, 28.0, p.answer.Counter.AirC)

	d := h.Now
	d.Kitchen.Profile = "Grandmother's cellar"
	h.Set(d)
	p.Show()
	assert.True(t, p.bar.problem.Visible())
	assert.Contains(t, p.bar.problem.Text, "Grandmother's cellar")
	assert.Equal(t, "Home freezer", p.kitchen.Name)
	assert.Equal(t, "Grandmother's cellar", h.Now.Kitchen.Profile, "the design keeps its name")
}

func TestKitchensAreCopiedRenamedAndDeleted(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	e := p.editKitchen(func() cold.Profile { k := p.kitchen; k.Name = coldview.FreeName(p.kitchens, k.Name); return k }(), "")
	assert.Equal(t, "Home freezer 2", e.form.Kitchen.Name)
	e.form.Kitchen.Name = "home FREEZER"
	e.save()
	assert.Contains(t, e.problem.Text, "already")
	e.form.Kitchen.Name = "Quay"
	e.save()
	assert.Equal(t, "Quay", h.Now.Kitchen.Profile)
	assert.True(t, p.kitchens.Own("quay"))

	e = p.editKitchen(func() cold.Profile { k, _ := p.kitchens.Find("Quay"); return k }(), "Quay")
	e.form.Kitchen.Name = "Saltmarsh Quay"
	e.numbers["counter.air_c"].ShowValue(60)
	e.save()
	assert.Contains(t, e.problem.Text, "counter.air_c")
	e.numbers["counter.air_c"].ShowValue(26)
	e.save()
	assert.Equal(t, "Saltmarsh Quay", h.Now.Kitchen.Profile)
	assert.False(t, p.kitchens.Own("Quay"))
	p.Show()
	assert.Equal(t, 26.0, p.kitchen.Counter.AirC)

	p.bar.removeNow("Saltmarsh Quay")
	assert.Empty(t, h.Now.Kitchen.Profile)
	_, err := p.kitchens.Find("Saltmarsh Quay")
	assert.Error(t, err)
}

// typeInto types a text into a field and presses Return.
func typeInto(f fyne.Focusable, text string) {
	f.FocusGained()
	for _, r := range text {
		f.TypedRune(r)
	}
	strike(f, fyne.KeyReturn)
}

func TestReturnAndEscapeAnswerTheDialogsOfTheCold(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	open := func() bool { return h.Win.Canvas().Overlays().Top() != nil }

	e := p.editKitchen(p.kitchen, p.kitchen.Name)
	strike(e.numbers["counter.air_c"].Focusable(), fyne.KeyEscape)
	assert.False(t, open(), "Escape in a field leaves the kitchen as it was")
	e = p.editKitchen(p.kitchen, p.kitchen.Name)
	typeInto(e.numbers["counter.air_c"].Focusable(), "99")
	assert.True(t, open(), "what is out of range is not taken")
	typeInto(e.numbers["counter.air_c"].Focusable(), "27")
	assert.False(t, open(), "Return saves")
	kept, err := p.kitchens.Find(p.kitchen.Name)
	require.NoError(t, err)
	assert.Equal(t, 27., kept.Counter.AirC)
	h.Until(func() bool { return p.state == planDone })

	c := p.calibrate(cold.ScoopedWell)
	minutes := c.typed["minutes"].Focusable()
	assert.Same(t, minutes, h.Win.Canvas().Focused(), "one may type at once")
	typeInto(minutes, fmt.Sprint(math.Round(1.3*p.answer.Counter.FromMinutes.Value)))
	h.Until(func() bool { return !c.keep.Disabled() || c.word.Text != "" })
	require.False(t, c.keep.Disabled(), c.word.Text)
	strike(minutes, fyne.KeyReturn)
	assert.False(t, open(), "a second Return keeps what was found")
	assert.NotEmpty(t, p.kitchen.Counter.Measured)
	c = p.calibrate(cold.CoreAt)
	strike(c.typed["core_c"].Focusable(), fyne.KeyEscape)
	assert.False(t, open())

	p.bar.askRemove()
	require.True(t, open())
	strike(h.Win.Canvas().Focused(), fyne.KeyEscape)
	assert.False(t, open())
	assert.True(t, p.kitchens.Own(p.kitchen.Name))
	p.bar.askRemove()
	strike(h.Win.Canvas().Focused(), fyne.KeyReturn)
	assert.False(t, open())
	assert.False(t, p.kitchens.Own(p.kitchen.Name))
}

func TestACalibrationIsKeptUndoneAndForgotten(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	before := p.answer.Counter
	measured := math.Round(1.5 * before.FromMinutes.Value)
	p.choose(coldview.Counter)
	c := p.calibrate(cold.ScoopedWell)
	c.run()
	assert.NotEmpty(t, c.word.Text, "nothing was measured yet")
	assert.True(t, c.keep.Disabled())
	c.typed["minutes"].ShowValue(measured)
	c.run()
	h.Until(func() bool { return !c.keep.Disabled() || c.word.Text != "" })
	require.False(t, c.keep.Disabled(), c.word.Text)
	want, err := cold.Calibrate(context.Background(), h.Now, &h.Found, cold.Default(), cold.Measurement{Kind: cold.ScoopedWell, Minutes: measured})
	require.NoError(t, err)
	test.Tap(c.keep)
	h.Until(func() bool { return p.state == planDone })
	own, err := cold.LoadProfiles(p.kitchens.Path())
	require.NoError(t, err)
	require.Len(t, own, 1)
	assert.InDelta(t, want.Counter.Factor, own[0].Counter.Factor, 1e-12)
	assert.Equal(t, want.Counter.Measured, own[0].Counter.Measured)
	after := p.answer.Counter
	assert.NotEqual(t, before.FromMinutes.Value, after.FromMinutes.Value)
	assert.Less(t, after.FromMinutes.High/after.FromMinutes.Low, before.FromMinutes.High/before.FromMinutes.Low, "a measured kitchen is known better")

	require.True(t, p.replaced.Has(p.kitchen.Name, cold.ScoopedWell))
	p.undoCalibration(cold.ScoopedWell)
	h.Until(func() bool { return p.state == planDone })
	assert.Equal(t, before.FromMinutes, p.answer.Counter.FromMinutes)
	assert.False(t, p.replaced.Has(p.kitchen.Name, cold.ScoopedWell))
}

func TestAnImpossibleMeasurementIsRefusedInWords(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	c := p.calibrate(cold.CoreAt)
	c.typed["start_c"].ShowValue(-6)
	c.typed["core_c"].ShowValue(-30)
	c.typed["minutes"].ShowValue(120)
	c.run()
	assert.Contains(t, c.word.Text, "freezer's air")
	c.typed["core_c"].ShowValue(-12)
	c.typed["minutes"].ShowValue(2)
	c.run()
	h.Until(func() bool { return c.word.Text != "" })
	assert.Contains(t, c.word.Text, "No freezer in reason")
	assert.True(t, c.keep.Disabled())
}

func TestAFileThatCannotBeReadLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "profiles.yaml")
	text := "version: 1\nprofiles:\n  - name: Quay\n    freezer:\n      air_c: warm\n"
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	k := kitchens.Open(path)
	require.Error(t, k.Problem())
	assert.Contains(t, k.Problem().Error(), "line 5")
	assert.Len(t, k.All(), len(cold.BuiltIn()))
	assert.Error(t, k.Keep(cold.Default(), ""))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, text, string(data))
}

func TestKitchensNeedAFolder(t *testing.T) {
	assert.ErrorContains(t, kitchens.Open("").Keep(cold.Default(), ""), "configuration folder")
}

func TestEveryPartOfTheColdTakesTheKeyboard(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	reached := map[fyne.Focusable]bool{}
	c := h.Win.Canvas()
	for i := 0; i < 60; i++ {
		test.FocusNext(c)
		if c.Focused() != nil {
			reached[c.Focused()] = true
		}
	}
	for _, v := range p.views {
		assert.True(t, reached[v.tile], v.Title())
	}
	for _, s := range slides(p.views[coldview.Counter]) {
		assert.True(t, reached[s.Focusable()])
	}
	assert.True(t, reached[p.stage.time.Focusable()])
	assert.True(t, reached[p.stage.plot])
	assert.True(t, reached[p.bar.choose])
	strike(p.views[coldview.Foam].tile, fyne.KeySpace)
	assert.Equal(t, coldview.Foam, p.current)
}

// TestTheColdLooks draws the page in every dress. With COLD_LOOK set to a
// folder it leaves the pictures there, for people to look at.
func TestTheColdLooks(t *testing.T) {
	for dress, o := range map[string]theme.Options{
		"light":    {Variant: theme.Light},
		"dark":     {Variant: theme.Dark},
		"light150": {Variant: theme.Light, TextScale: 1.5},
	} {
		p, h := coldPage(t, market.Honey(), o)
		for _, v := range p.views {
			p.choose(v.Question)
			h.Win.Resize(fyne.NewSize(1280, 720))
			size := h.Win.Canvas().Size()
			assert.LessOrEqual(t, size.Width, float32(1280), "%s %s", dress, v.Title())
			assert.LessOrEqual(t, size.Height, float32(720), "%s %s", dress, v.Title())
			if dir := os.Getenv("COLD_LOOK"); dir != "" {
				f, err := os.Create(filepath.Join(dir, v.Title()+"_"+dress+".png"))
				require.NoError(t, err)
				require.NoError(t, png.Encode(f, h.Win.Canvas().Capture()))
				require.NoError(t, f.Close())
			}
		}
		p.Leave()
	}
}

// Odd kitchens and tubs, in which much is never reached, are shown in words.
func TestWhatIsNeverReachedIsSaid(t *testing.T) {
	odd := map[string]func(d *design.Design, k *cold.Profile){
		"custard only":    func(d *design.Design, _ *cold.Profile) { d.Blend.FoamVolumePercent = 0 },
		"foam only":       func(d *design.Design, _ *cold.Profile) { d.Blend.FoamVolumePercent = 100 },
		"thimble":         func(d *design.Design, _ *cold.Profile) { d.Tubs.VolumeML = 30 },
		"warm freezer":    func(_ *design.Design, k *cold.Profile) { k.Freezer.AirC = -4 },
		"icy edge":        func(_ *design.Design, k *cold.Profile) { k.Layer.StirEveryMinutes = 0 },
		"steady":          func(_ *design.Design, k *cold.Profile) { k.SwingK = 0 },
		"cold counter":    func(_ *design.Design, k *cold.Profile) { k.Counter.AirC = 5 },
		"blast":           func(_ *design.Design, k *cold.Profile) { *k = cold.BuiltIn()[4] },
		"foam that weeps": func(d *design.Design, _ *cold.Profile) { d.Foam.Syrup.Lines[0].Grams = 480 },
		"nothing freezes": func(d *design.Design, _ *cold.Profile) { d.Dense.Lines[3].Grams = 900 },
	}
	for name, change := range odd {
		t.Run(name, func(t *testing.T) {
			d, k := market.Honey(), cold.Default()
			d.Foam.Syrup.Lines, d.Dense.Lines = slices.Clone(d.Foam.Syrup.Lines), slices.Clone(d.Dense.Lines)
			change(&d, &k)
			k.Name = "Odd"
			p, h := coldPage(t, market.Honey(), daylight)
			require.NoError(t, p.kitchens.Keep(k, ""))
			d.Kitchen.Profile = "Odd"
			h.Set(d)
			p.Show()
			h.Until(func() bool { return p.state == planDone || p.state == planFailed })
			require.Equal(t, planDone, p.state, p.bar.problem.Text)
			for _, v := range p.views {
				p.choose(v.Question)
				said := tile(v)
				for _, text := range []string{said.Value, said.Foot, p.stage.caption.Text} {
					assert.NotContains(t, text, "NaN")
					assert.NotContains(t, text, "Inf")
				}
				assert.NotEmpty(t, said.Value, v.Title())
				if dir := os.Getenv("COLD_LOOK"); dir != "" {
					f, err := os.Create(filepath.Join(dir, "odd "+name+" "+v.Title()+".png"))
					require.NoError(t, err)
					require.NoError(t, png.Encode(f, h.Win.Canvas().Capture()))
					require.NoError(t, f.Close())
				}
			}
		})
	}
}

// BenchmarkTheTimeMoves is one step of the scrubber, without what the window
// takes to paint it.
func BenchmarkTheTimeMoves(b *testing.B) {
	p, _ := coldPage(b, market.Honey(), daylight)
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		p.stage.at(float64(i % 60))
	}
}
