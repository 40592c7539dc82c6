package say

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDigitsAreWrittenForPeople(t *testing.T) {
	for v, want := range map[float64]string{0: "0", 0.0115: "0.0115", 0.015: "0.015", -0.4: "−0.4", 5.39: "5.39", 48.9: "48.9", 287: "287", 0.000518: "0.000518", 0.0001: "0.0001", 1.5e-5: "1.5 × 10⁻⁵", 4.66e-7: "4.66 × 10⁻⁷"} {
		assert.Equal(t, want, Style{}.Sized(v))
	}
	for v, want := range map[float64]string{0: "0", 3.14159265: "3.1416", 123456: "123456", 99.99: "99.99", 0.00012: "0.00012", -2.5: "−2.5"} {
		assert.Equal(t, want, Style{}.FiveDigits(v))
	}
	assert.Equal(t, "2,5", Style{Comma: true}.Sized(2.5))
}
