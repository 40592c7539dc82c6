package model_test

import (
	"fmt"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
)

// The plain design of Saltmarsh Quay, an invented stall, from lines to verdict. Its
// syrup of 118 °C holds 12.2 % of water by Starzak & Peacock 1997, Zuckerindustrie
// 122:380–387 (syrup_solids_at_temperature.csv).
func ExampleModel_Evaluate() {
	r, err := model.New(market.Shelf()).Evaluate(market.Plain())
	if err != nil {
		panic(err)
	}
	fmt.Printf("the custard freezes at %.1f °C and is %s; the foam is %s\n", r.Dense.FreezingPointC.Value, r.Dense.Word.Name, r.Foam.Word.Name)
	fmt.Printf("the syrup holds %.1f %% of water\n", 100-r.Syrup.SolidsPercent)
	// Output:
	// the custard freezes at -1.8 °C and is hard; the foam is very soft
	// the syrup holds 12.2 % of water
}
