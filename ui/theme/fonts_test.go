package theme

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	base "fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// TestEverySignThatTheProgramWritesHasAShape: on a desktop without fonts of its
// own a sign that neither ours nor the toolkit's font has is a black lozenge.
func TestEverySignThatTheProgramWritesHasAShape(t *testing.T) {
	weights := [][]*sfnt.Font{
		{parsed(t, signsRegular), parsed(t, base.DefaultTextFont().Content())},
		{parsed(t, signsBold), parsed(t, base.DefaultTextBoldFont().Content())},
	}
	checked := map[rune]bool{}
	check := func(text, where string) {
		for _, r := range text {
			if r < 0xA0 || r == 0xFEFF || r == 0xFFFD || checked[r] {
				continue
			}
			checked[r] = true
			for _, faces := range weights {
				assert.True(t, has(faces, r), "%q (%U) of %s", r, r, where)
			}
		}
	}
	for _, root := range []string{"..", "../../internal", "../../cmd"} {
		require.NoError(t, filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
			if err != nil || e.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
					s, err := strconv.Unquote(l.Value)
					require.NoError(t, err)
					check(s, path)
				}
				return true
			})
			return nil
		}))
	}
	for _, path := range []string{"../../assets/library/ingredients.jsonl", "../../assets/library/SOURCES.md"} {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		check(string(text), path)
	}
	assert.Contains(t, checked, '−')
	assert.Contains(t, checked, '≥')
}

// TestASpaceAfterASignHasAShape: the toolkit shapes a space with the letters before
// it, and what their font lacks becomes a lozenge, "✗" and one more sign.
func TestASpaceAfterASignHasAShape(t *testing.T) {
	letters := parsed(t, base.DefaultTextFont().Content())
	const em = 64 * 1000
	for _, ttf := range [][]byte{signsRegular, signsBold} {
		signs := parsed(t, ttf)
		for _, space := range " \u00a0" {
			require.True(t, has([]*sfnt.Font{signs}, space), "%U", space)
			assert.InDelta(t, advance(t, letters, space, em), advance(t, signs, space, em), 64, "%U", space)
		}
	}
}

// advance is a letter's width at a size, both in 64ths of a pixel.
func advance(t *testing.T, f *sfnt.Font, r rune, size int) float64 {
	t.Helper()
	g, err := f.GlyphIndex(nil, r)
	require.NoError(t, err)
	a, err := f.GlyphAdvance(nil, g, fixed.Int26_6(size), font.HintingNone)
	require.NoError(t, err)
	return float64(a)
}

func parsed(t *testing.T, ttf []byte) *sfnt.Font {
	t.Helper()
	f, err := sfnt.Parse(ttf)
	require.NoError(t, err)
	return f
}

func has(faces []*sfnt.Font, r rune) bool {
	for _, f := range faces {
		if g, err := f.GlyphIndex(nil, r); err == nil && g != 0 {
			return true
		}
	}
	return false
}

// TestSignsStandOnTheLineOfTheLettersBesideThem: the toolkit places a run of text
// by the ascent of its first letter's font.
func TestSignsStandOnTheLineOfTheLettersBesideThem(t *testing.T) {
	letters := parsed(t, base.DefaultTextFont().Content())
	for _, ttf := range [][]byte{signsRegular, signsBold} {
		signs := parsed(t, ttf)
		assert.InDelta(t, lift(t, letters), lift(t, signs), 0.001)
	}
}

// lift is a font's ascent in ems.
func lift(t *testing.T, f *sfnt.Font) float64 {
	t.Helper()
	const em = 1000
	m, err := f.Metrics(nil, em*64, 0)
	require.NoError(t, err)
	return float64(m.Ascent) / 64 / em
}
