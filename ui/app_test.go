package ui

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestThePackageBearsTheNameOfTheProgram: with two names, a packaged program
// would not find its settings.
func TestThePackageBearsTheNameOfTheProgram(t *testing.T) {
	data, err := os.ReadFile("../FyneApp.toml")
	require.NoError(t, err)
	id := regexp.MustCompile(`(?m)^ID = "(.*)"$`).FindSubmatch(data)
	require.NotNil(t, id)
	assert.Equal(t, AppID, string(id[1]))
}
