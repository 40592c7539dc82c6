package astray_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/astray"
)

func TestEnglishIsSeenInGerman(t *testing.T) {
	for text, seen := range map[string]bool{
		"Bei −12 °C gilt: die Creme ist gut portionierbar.":                             false,
		"At −12 °C the custard scoops.":                                                 true,
		"Serve at −12 °C":                                                               true,
		"Die Grenze ist 5 °C (FDA Food Code 3-501.14); das gilt (Mattick et al. 2001).": false,
		"Sea buckthorn purée of the quay: weder Natrium noch Asche ist bekannt":         true,
		"Notiz „half of the honey“ in quay.yaml, mit --from":                            false,
		"Nothing needs to change.":                                                      true,
	} {
		assert.Equal(t, seen, len(astray.English(text)) > 0, text)
	}
	assert.Empty(t, astray.English("Sea buckthorn purée of the quay: weder Natrium noch Asche", "Sea buckthorn purée of the quay"))
}
