package ui

import (
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
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

	side := &besides{w: b.Window, outs: fyne.NewContainerWithoutLayout(), table: fyne.NewContainerWithoutLayout(), only: kit.NewCheck("", nil)}
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

// A design goes by its button or by Delete on it, the open one never, and the keyboard
// stays in the dialog.
func TestADesignIsTakenOutOfThoseSideBySide(t *testing.T) {
	b := newBed(t)
	side := &besides{w: b.Window, outs: container.NewVBox(), table: container.NewVBox(), only: kit.NewCheck("", nil), pick: kit.NewSelect(nil, nil)}
	kit.Ask(b.win, "Side by side", container.NewVBox(side.pick, side.outs), kit.Answer{Name: "Close", Role: kit.ByEscape})
	for _, name := range []string{"open", "one", "two", "three"} {
		side.add(name, b.Design())
	}
	outs := func() (found []*nameButton) {
		for _, o := range test.LaidOutObjects(b.win.Canvas().Overlays().Top()) {
			if n, ok := o.(*nameButton); ok {
				found = append(found, n)
			}
		}
		return found
	}
	all := outs()
	require.Len(t, all, 3)
	gone, stays := all[1].Text, all[2].Text
	all[1].Tapped(nil)
	require.Len(t, outs(), 2)
	assert.NotContains(t, []string{outs()[0].Text, outs()[1].Text}, gone)
	assert.Equal(t, stays, outs()[1].Text)
	for range 2 {
		b.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	}
	assert.Empty(t, outs())
	assert.IsType(t, &kit.Select{}, b.win.Canvas().Focused())
	b.escape()
	assert.False(t, b.asking())
}
