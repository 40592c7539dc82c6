package egg_test

import (
	"fmt"

	"ripplewright/internal/food/egg"
)

// USDA SR28, NDB 01123 and 01125, household weights of a US large egg: 50 g
// without the shell, the yolk 17 g.
func ExampleGrams() {
	for _, part := range []string{"eggs", "yolks"} {
		g, err := egg.Grams("US", "large", part, 2)
		fmt.Println(g, err)
	}
	// Output:
	// 100 <nil>
	// 34 <nil>
}
