package plan_test

import (
	"context"
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

func making(t testing.TB, m *model.Model, d design.Design) process.Process {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	a, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
	require.NoError(t, err)
	return process.Of(d, &r, process.Default(), -18, &a)
}

func TestEveryDemoHasADayFromBothEnds(t *testing.T) {
	m := model.New(market.Library(t))
	for name, d := range market.Demos(t) {
		p := making(t, m, d)
		for _, back := range []bool{true, false} {
			o := plan.For(&p)
			if back {
				o.ServeMinutes = 10*24*60 + 15*60
			} else {
				o.StartMinutes = 10*24*60 + 9*60
			}
			got, err := plan.Lay(p.Steps, o)
			require.NoError(t, err, "%s back %v", name, back)
			require.NoError(t, got.Check(), "%s back %v", name, back)
			for _, task := range got.Tasks {
				if back {
					assert.LessOrEqual(t, task.EndMinutes, o.ServeMinutes+1e-6)
				} else {
					assert.GreaterOrEqual(t, task.StartMinutes, o.StartMinutes-1e-6)
				}
				for _, h := range task.Hands {
					at := math.Mod(h.FromMinutes, 24*60)
					assert.True(t, at >= o.WakeMinutes-1e-3 && at <= o.BedMinutes, "%s: hands at %v", task.Step.Code, at)
				}
			}
			s := got.Span()
			assert.Less(t, s.ToMinutes-s.FromMinutes, 4.0*24*60, "%s: days", name)
			if testing.Verbose() {
				for _, task := range got.Tasks {
					fmt.Printf("%s %v %-20s %s-%s\n", name, back, task.Step.Code, clock(task.StartMinutes), clock(task.EndMinutes))
				}
			}
		}
	}
}

func clock(m float64) string {
	return fmt.Sprintf("d%d %02d:%02d", int(m/1440)-10, int(math.Mod(m, 1440)/60), int(math.Mod(m, 60)))
}

// Nothing is taken twice and no order is broken, whatever is made and whenever.
func TestNoPlanTakesAThingTwiceOrBreaksAnOrder(t *testing.T) {
	m := model.New(market.Library(t))
	source := rand.New(rand.NewSource(7))
	all := market.Demos(t)
	names := []string{"hazelnut.yaml", "buckthorn.yaml", "oat-orchard.yaml"}
	n := 60
	if testing.Short() {
		n = 6
	}
	for range n {
		d := all[names[source.Intn(len(names))]]
		d.Tubs.Count = 1 + source.Intn(12)
		d.Dense.StoveLossPercent = 12 * source.Float64()
		if source.Intn(3) == 0 {
			d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "cornstarch", Grams: 12})
		}
		if source.Intn(3) == 0 {
			d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "rum_40", Grams: 12})
		}
		p := making(t, m, d)
		o := plan.For(&p)
		if source.Intn(2) == 0 {
			o.ServeMinutes = 10*24*60 + 24*60*source.Float64()
		} else {
			o.StartMinutes = 10*24*60 + 24*60*source.Float64()
		}
		got, err := plan.Lay(p.Steps, o)
		require.NoError(t, err)
		require.NoError(t, got.Check())
	}
}

// The Food Code's clock (3-501.14) starts when the custard leaves the stove: it
// is at 21 °C within two hours and at 5 °C within six, whenever it is made and
// however many tubs, and then it stays in the refrigerator until it freezes.
func TestNoPlanBreaksTheCoolingRule(t *testing.T) {
	m := model.New(market.Library(t))
	source := rand.New(rand.NewSource(57))
	for name, d := range market.Demos(t) {
		for _, tubs := range []int{d.Tubs.Count, 1, 24} {
			d := d
			d.Tubs.Count = tubs
			p := making(t, m, d)
			require.True(t, p.Custard.Cool.BathMeets, "%s, %d tubs", name, tubs)
			for range 4 {
				o := plan.For(&p)
				o.ServeMinutes = 10*24*60 + 24*60*source.Float64()
				got, err := plan.Lay(p.Steps, o)
				require.NoError(t, err, "%s, %d tubs at %v", name, tubs, o.ServeMinutes)
				require.NoError(t, got.Check())
				at := map[process.StepCode]plan.Task{}
				hot := 0.0
				for _, task := range got.Tasks {
					at[task.Step.Code] = task
					switch task.Step.Code {
					case process.HeatMilk, process.Cook, process.OffHeat:
						hot = math.Max(hot, task.EndMinutes)
					}
				}
				bath, rest := at[process.CoolDown], at[process.Rest]
				assert.LessOrEqual(t, bath.EndMinutes-hot, float64(process.CoolByMin), "%s, %d tubs: at 5 °C before it has to be at 21", name, tubs)
				assert.LessOrEqual(t, rest.StartMinutes-bath.EndMinutes, 30.01, "%s: then into the refrigerator", name)
			}
		}
	}
}

// Custard and foam come to the texture that swirls within minutes of each other,
// and the tubs are cold by then.
func TestBothPhasesAreReadyTogether(t *testing.T) {
	m := model.New(market.Library(t))
	for name, d := range market.Demos(t) {
		p := making(t, m, d)
		for _, serve := range []bool{true, false} {
			o := plan.For(&p)
			o.StartMinutes = 10*24*60 + 9*60
			if serve {
				o.ServeMinutes, o.StartMinutes = o.StartMinutes, math.NaN()
			}
			got, err := plan.Lay(p.Steps, o)
			require.NoError(t, err)
			at := map[process.StepCode]plan.Task{}
			for _, task := range got.Tasks {
				at[task.Step.Code] = task
			}
			swirl := at[process.Swirl].StartMinutes
			assert.LessOrEqual(t, swirl-at[process.FreezeSoft].EndMinutes, 15.01, name)
			assert.LessOrEqual(t, swirl-at[process.ChillFoam].EndMinutes, 60.0, "%s: the foam keeps, but does not freeze through", name)
			assert.GreaterOrEqual(t, swirl, at[process.ChillTubs].EndMinutes-1e-6, name)
		}
	}
}

// A churn takes its bowl from the freezer a day after it went in, and no beater;
// a cook who works in the evenings only is asked for no more.
func TestAChurnAndShortDaysHaveTheirPlans(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Demo(t)
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	k := process.Default()
	k.ChurnBowlML, k.FromHours, k.ToHours = 1500, 16, 24
	p := process.Of(d, &r, k, -18, nil)
	o := plan.For(&p)
	o.ServeMinutes = 10*24*60 + 20*60
	got, err := plan.Lay(p.Steps, o)
	require.NoError(t, err)
	require.NoError(t, got.Check())
	var bowl, churn plan.Task
	for _, task := range got.Tasks {
		switch task.Step.Code {
		case process.FreezeBowl:
			bowl = task
		case process.FreezeSoft:
			churn = task
		}
		for _, h := range task.Hands {
			at := math.Mod(h.FromMinutes, 24*60)
			assert.GreaterOrEqual(t, at, 16*60-1e-3, "%s", task.Step.Code)
		}
	}
	assert.GreaterOrEqual(t, churn.StartMinutes-bowl.StartMinutes, 24.0*60-1e-6)
	for _, u := range got.Uses {
		if got.Tasks[u.Task].Step.Code == process.FreezeSoft {
			assert.NotEqual(t, process.Mixer, u.What)
		}
	}
}
