package plan_test

import (
	"fmt"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
)

// The day of the plain design of Saltmarsh Quay, an invented stall, served at three
// in the afternoon of its second day: no published example is known to us.
func ExampleLay() {
	d := market.Plain()
	r, err := model.New(market.Shelf()).Evaluate(d)
	if err != nil {
		panic(err)
	}
	made := process.Of(d, &r, process.Default(), -18, nil)
	order := plan.For(&made)
	order.ServeMinutes = (24 + 15) * 60
	day, err := plan.Lay(made.Steps, order)
	if err != nil {
		panic(err)
	}
	first, span := day.Tasks[0], day.Span()
	fmt.Printf("%d steps; first %s; ready at %02.0f:00 of the next day\n", len(day.Tasks), first.Step.Code, (span.ToMinutes-24*60)/60)
	// Output:
	// 15 steps; first crack; ready at 15:00 of the next day
}
