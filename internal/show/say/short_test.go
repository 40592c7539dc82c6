package say

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Half a millimetre is 0.02 in (NIST SP 811, Appendix B.8: 1 in is 25.4 mm), not 0.0.
func TestShortLengthsAreNotNoughtInInches(t *testing.T) {
	us := Style{Volumes: Cups}
	assert.Equal(t, "0.02 in", us.Length(0.5))
	assert.Equal(t, "0.04 to 0.12 in", us.LengthSpan(1, 3))
	assert.Equal(t, "0.12 to 2.0 in", us.LengthSpan(3, 50))
	assert.Equal(t, "2.0 in", us.Length(50))
	assert.NotContains(t, RibbonWords(us), "0.0 in")
	assert.NotContains(t, RibbonWords(us), " 0.0 to")
}

func TestAMakerWhoHasCupsWeighsACup(t *testing.T) {
	name, ml := Style{Volumes: Cups}.levelCup()
	assert.Equal(t, "cup", name)
	assert.InDelta(t, 236.588, ml, 0.001) // NIST SP 811, Appendix B.8
	name, ml = Style{}.levelCup()
	assert.Equal(t, "250 mL cup", name)
	assert.Equal(t, 250.0, ml)
}
