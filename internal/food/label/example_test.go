package label_test

import (
	"fmt"

	"ripplewright/internal/food/label"
)

// 21 CFR 101.9(c)(1) and (c)(2): calories over 50 to the nearest 10, fat under 5 g
// to the nearest half gram.
func ExampleDeclare() {
	for _, amount := range []struct {
		nutrient string
		of       float64
	}{{"calories", 208.76}, {"total_fat", 3.62}} {
		text, err := label.Declare(amount.nutrient, amount.of)
		fmt.Println(text, err)
	}
	// Output:
	// 210 <nil>
	// 3.5g <nil>
}
