package cold_test

import (
	"context"
	"fmt"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
)

// The plain design of Saltmarsh Quay, an invented stall, in an ordinary kitchen: no
// published example has two phases.
func ExamplePlan() {
	d := market.Plain()
	r, err := model.New(market.Shelf()).Evaluate(d)
	if err != nil {
		panic(err)
	}
	a, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
	if err != nil {
		panic(err)
	}
	fmt.Printf("hard after %.0f h at %.0f °C; on the counter it scoops from %.0f to %.0f min\n",
		a.Harden.Hours.Value, cold.Default().Freezer.AirC, a.Counter.FromMinutes.Value, a.Counter.ToMinutes.Value)
	// Output:
	// hard after 5 h at -18 °C; on the counter it scoops from 16 to 36 min
}
