package astray_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/astray"
)

func TestWhatIsAstrayIsFound(t *testing.T) {
	for _, x := range []struct {
		system, text string
		in, bare     int
	}{
		{"us", "At 10 °F, 7.0 lb/gal, 543 g (19.1 oz)", 0, 0},
		{"us", "At −12 °C, 30 mm deep, 250 mL", 3, 0},
		{"us", "Whisk 90 g yolks", 0, 1},
		{"us", "0.41 for 100 g; 16.0 g lactose to 100 g of the custard's water, where usual mixes end at 10.5 g: sandy", 0, 0},
		{"us", "2,5 g (0,09 oz)", 2, 0},
		{"metric", "At −12 °C, 250 mL, 1.05 g/mL, 21 CFR 101.9", 0, 0},
		{"metric", "At 10 °F, 2 lb 3.7 oz, 1.5 in deep", 4, 0},
		{"comma", "2,5 g at −12,5 °C on 27:30, € 3,40", 0, 0},
		{"comma", "2.5 g", 1, 0},
	} {
		s := astray.Systems[x.system]
		assert.Len(t, astray.In(x.text, s), x.in, x.text)
		assert.Len(t, astray.Bare(x.text, s), x.bare, x.text)
	}
}
