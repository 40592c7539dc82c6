package daypage

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	ics "github.com/arran4/golang-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// desk is the page on a Friday morning that the test can move.
type desk struct {
	*Page
	*pagetest.Press
	at     time.Time
	events []string
}

func open(t *testing.T, d design.Design, look theme.Options) *desk {
	k := &desk{Press: pagetest.NewPress(t, d, look), at: time.Date(2026, 11, 27, 9, 10, 0, 0, time.UTC)}
	k.Page = New(k.Press, kitchens.Open(""), func() time.Time { return k.at },
		func(event string, args ...any) { k.events = append(k.events, fmt.Sprintf(event, args...)) })
	k.Open(k.Page)
	k.wait()
	return k
}

func (k *desk) wait() { k.Until(func() bool { return !k.waits }) }

func TestThePlanServesWhenAsked(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	require.NotNil(t, k.answer)
	sunday := time.Date(2026, 11, 29, 15, 0, 0, 0, time.UTC)
	assert.False(t, k.answer.Day.Serves.After(sunday))
	assert.Contains(t, k.head.Text, say.Clock(k.answer.Day.Begins))
	assert.Contains(t, k.events, fmt.Sprintf("plan computed tasks=%d moved=%d", len(k.answer.Plan.Tasks), len(k.answer.Plan.Moved)))
	text := pagetest.Texts(k.list)
	for _, s := range k.answer.Plan.Tasks {
		assert.Contains(t, text, say.StepTitle(s.Step.Code))
		assert.Contains(t, text, say.Step(say.Style{}, k.answer.Making, s.Step).Text)
	}
	for _, m := range k.answer.Plan.Moved {
		assert.Contains(t, k.moved.Text, say.Moved(say.Style{}, m))
	}

	k.hour.OnChanged = nil
	k.hour.ShowValue(19)
	k.Show()
	k.wait()
	assert.False(t, k.answer.Day.Serves.After(sunday.Add(4*time.Hour)))
	assert.True(t, k.answer.Day.Serves.After(sunday))
}

func TestWhatCannotBeServedInTimeIsSaid(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	k.day.SetSelectedIndex(0) // today
	k.wait()
	assert.Contains(t, k.head.Text, "Too late")
	k.ask.SetSelected(startNow.String())
	k.wait()
	assert.False(t, k.answer.Day.Begins.Before(k.at))
	assert.NotContains(t, k.head.Text, "Too late")
	assert.False(t, k.when.Visible())
}

func TestADesignThatChangesIsPlannedAnew(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	before := k.answer
	k.Show()
	assert.False(t, k.waits, "nothing has changed")
	d := market.Honey()
	d.Foam.Syrup.CookTemperatureC = 120
	k.Set(d)
	k.Show()
	k.Leave() // before it is there
	k.Show()
	k.wait()
	assert.NotSame(t, before, k.answer)
	assert.True(t, k.answer.Making.Design.Equal(d))

	d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil, nil
	k.Set(d)
	k.Show()
	k.wait()
	assert.Contains(t, k.head.Text, "nothing to make")
	assert.True(t, k.exports[0].Disabled())
}

func TestTheCooksHoursAreKeptWithTheKitchen(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	k.kitchens = kitchens.Open(filepath.Join(t.TempDir(), "kitchens.yaml"))
	k.from.ShowValue(12)
	k.to.ShowValue(20)
	k.keepHours()
	k.wait()
	for _, task := range k.answer.Plan.Tasks {
		for _, h := range task.Hands {
			at := k.answer.Clock(h.FromMinutes)
			assert.GreaterOrEqual(t, at.Hour(), 12, "%s at %s", task.Step.Code, at)
			assert.Less(t, at.Hour(), 20, "%s at %s", task.Step.Code, at)
		}
	}
	k.from.ShowValue(21)
	k.keepHours()
	assert.Contains(t, k.Said, "must come after")
}

func TestTheChartShowsEveryUseAndReadsItOut(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	v := k.picture()
	b := k.rows[0].Bars[0]
	assert.Contains(t, k.words((b.FromMinutes+b.ToMinutes)/2), say.Taking(process.Hands, b.Step))
	all := v.X.Max - v.X.Min
	k.part.SetSelectedIndex(1)
	v = k.picture()
	assert.Less(t, v.X.Max-v.X.Min, all, "a stretch of work is a part of the plan")
}

func TestThePlanIsWrittenAsACalendarAndAsATable(t *testing.T) {
	k := open(t, market.Honey(), theme.Options{})
	k.export(".ics")
	c, err := ics.ParseCalendar(strings.NewReader(string(k.Written())))
	require.NoError(t, err)
	assert.Len(t, c.Events(), len(k.answer.Plan.Tasks))
	k.export(".md")
	assert.Contains(t, string(k.Written()), "| from | to |")
	assert.ErrorContains(t, write(k.Wrote+".txt", k.answer.Day, k.at), ".ics or .md")
}

func TestThePageKeepsWithinASmallWindow(t *testing.T) {
	for name, look := range pagetest.Dresses {
		k := open(t, market.Honey(), look)
		k.Win.Resize(fyne.NewSize(1280, 560))
		k.KeepLook("day-" + name)
		size := k.Page.Object().MinSize()
		assert.LessOrEqual(t, size.Width, float32(1264), name)
		assert.LessOrEqual(t, size.Height, float32(560), name)
		k.answer.Plan.Moved = append(k.answer.Plan.Moved, k.answer.Plan.Moved...)
		k.answer.Plan.Moved = append(k.answer.Plan.Moved, k.answer.Plan.Moved...)
		k.Page.show(k.asked)
		top := k.moved.Position().Y + k.moved.MinSize().Height
		assert.Greater(t, k.moved.MinSize().Height, 2*k.head.MinSize().Height-10, "several lines")
		assert.LessOrEqual(t, top, k.split.Position().Y, "%s: the lines stand over the chart", name)
		k.part.SetSelectedIndex(len(k.part.Options) / 2)
		k.KeepLook("day-part-" + name)
	}
}
