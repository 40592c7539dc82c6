package say

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAPlaceInADesignIsNamedAsTheMakerNamesIt(t *testing.T) {
	for path, want := range map[string]string{
		"dense.stove_loss_percent": "custard, stove loss",
		"blend.dense_colour":       "blend, custard colour",
		"foam.overrun_percent":     "foam, overrun",
		"tubs.volume_ml":           "tubs, volume",
		"dense.lines[2].note":      "custard, line 3, note",
	} {
		assert.Equal(t, want, SettingName(path))
	}
}
