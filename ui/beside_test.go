package ui

import (
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/ui/kit"
)

// chooser is the select of the dialog on top that offers an option.
func (b *bed) chooser(option string) *kit.Select {
	b.t.Helper()
	for _, o := range test.LaidOutObjects(b.win.Canvas().Overlays().Top()) {
		if s, ok := o.(*kit.Select); ok {
			for _, x := range s.Options {
				if x == option {
					return s
				}
			}
		}
	}
	require.Fail(b.t, "no choice of "+option)
	return nil
}

func TestANewDesignStartsFromABaseForTheTubsAtHand(t *testing.T) {
	b := newBed(t)
	b.menu("File", say.StartItem.String())
	b.chooser("base: rich").SetSelected("base: rich")
	b.chooser("honey").SetSelected("honey")
	require.True(t, kit.Accept(b.win.Canvas()), "Return starts")
	b.frame()
	d := b.Design()
	assert.Equal(t, "Rich", d.Name)
	assert.Equal(t, 4, d.Tubs.Count)
	require.NotEmpty(t, d.Foam.Syrup.Lines)
	assert.Equal(t, "honey", d.Foam.Syrup.Lines[0].Ingredient)
	assert.True(t, b.Result().Verdict.Good)
	assert.Equal(t, "", b.Session.Path(), "no file yet")

	b.menu("File", say.StartItem.String())
	require.True(t, kit.Dismiss(b.win.Canvas()), "Escape leaves all as it is")
	assert.True(t, d.Equal(b.Design()))
}

func TestDesignsStandSideBySideWithWhatDiffersMarked(t *testing.T) {
	b := newBed(t)
	other := b.Design().WithGrams(design.DensePart, 0, 333)
	other.Name = "Another"
	path := filepath.Join(t.TempDir(), "other.yaml")
	_, err := designfile.Save(path, nil, other, designfile.SaveOptions{})
	require.NoError(t, err)
	b.askCompare()
	demo := say.StartDemoName(b.Demos[0].Name)
	b.chooser(demo).SetSelected(demo)
	assert.Contains(t, b.dialogTexts(), say.CompareSame.String(), "the demo is open")
	require.True(t, kit.Dismiss(b.win.Canvas()))

	side := &besides{w: b.Window, table: fyne.NewContainerWithoutLayout(), only: kit.NewCheck("", nil)}
	side.only.Checked = true
	side.add(say.CompareOpen.String(), b.Design())
	side.addFile(path)
	require.Len(t, side.sides, 2)
	text := ""
	for _, x := range side.table.Objects {
		if f, ok := x.(*kit.Figures); ok {
			text += strings.Join(f.Texts(), "\n")
		}
	}
	assert.Contains(t, text, say.DiffersMark)
	assert.Contains(t, text, "whole milk")
	assert.NotContains(t, text, "Foam: egg whites", "what is the same is left out")
	for range mostBeside {
		side.addFile(path)
	}
	assert.Len(t, side.sides, mostBeside)
	assert.Equal(t, say.CompareOpen.String(), side.sides[0].Name)
}
