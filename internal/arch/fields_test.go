package arch

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bareField is a field or a list of the toolkit's own: pressed while the toolkit does not know
// of which window it is, its menu kills the program. Those of ui/kit look first.
var bareField = regexp.MustCompile(`widget\.(NewEntry|NewMultiLineEntry|NewPasswordEntry|NewSelect|NewSelectEntry)\(`)

func TestEveryFieldLooksWhereItIsBeforeItOpensAMenu(t *testing.T) {
	files := 0
	require.NoError(t, filepath.WalkDir(filepath.Join(top, "ui"), func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		files++
		assert.Empty(t, bareField.FindAllString(string(text), -1), path)
		return err
	}))
	assert.Greater(t, files, 50)
}
