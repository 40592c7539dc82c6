package mix_test

import (
	"fmt"

	"ripplewright/internal/matter/mix"
)

// The mix of Goff, University of Guelph, "Calculation of freezing point depression
// of a mix": 10 % milk solids-not-fat, of which 54.5 % are lactose, 2 % whey solids
// with 76.5 %, and 12 % sucrose. Its lactose, 5.45 and 1.53, is 6.98 %.
func ExampleMix() {
	var milk, whey, sugar mix.Mix
	milk.Grams[mix.Lactose] = 10 * 0.545
	whey.Grams[mix.Lactose] = 2 * 0.765
	sugar.Grams[mix.Sucrose] = 12
	all := milk.PlusScaled(whey, 1).PlusScaled(sugar, 1)
	fmt.Printf("%.2f g lactose of %.2f g sugars\n", all.Grams[mix.Lactose], all.SugarsG())
	// Output:
	// 6.98 g lactose of 18.98 g sugars
}
