package ui

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
)

func TestUndoNamesWhatItTakesBack(t *testing.T) {
	b := newBed(t)
	d := b.Design()
	d.Foam.OverrunPercent = 280
	b.Commit(d, "overrun")
	b.frame()
	assert.Equal(t, "Undo: overrun 300 → 280 %", b.item("Edit", "Undo").Label)
	b.menu("Edit", "Undo")
	assert.Equal(t, "Redo: overrun 300 → 280 %", b.item("Edit", "Redo").Label)
}

func TestUndoCoversKitchens(t *testing.T) {
	b := newBed(t)
	k := cold.Default()
	k.Name = "Stall"
	require.NoError(t, b.kitchens.Keep(k, ""))
	colder := k
	colder.Freezer.AirC -= 2
	require.NoError(t, b.kitchens.Keep(colder, "Stall"))
	require.NoError(t, b.kitchens.Remove("Stall"))
	b.frame()
	assert.Equal(t, "Undo: removal of the kitchen “Stall”", b.item("Edit", "Undo").Label)
	b.menu("Edit", "Undo")
	assert.Contains(t, b.item("Edit", "Undo").Label, "kitchen “Stall”, freezer")
	b.menu("Edit", "Undo")
	got, err := b.kitchens.Find("Stall")
	require.NoError(t, err)
	assert.Equal(t, k, got)
	b.menu("Edit", "Undo")
	assert.False(t, b.kitchens.Own("Stall"))
	b.menu("Edit", "Redo")
	b.menu("Edit", "Redo")
	got, err = b.kitchens.Find("Stall")
	require.NoError(t, err)
	assert.Equal(t, colder, got)
}

func TestUndoCoversOwnIngredients(t *testing.T) {
	b := shelfBed(t, figs)
	coarse := *b.Shelf.Own()[0]
	coarse.Name = "Fig paste, coarse"
	require.NoError(t, b.Shelf.Put(&coarse, "fig_paste"))
	require.NoError(t, b.Shelf.Remove("fig_paste"))
	name := func() string {
		in, _ := b.Model().Library().Find("fig_paste")
		if in == nil {
			return ""
		}
		return in.Name
	}
	b.frame()
	assert.Equal(t, "Undo: removal of the own ingredient Fig paste, coarse", b.item("Edit", "Undo").Label)
	b.menu("Edit", "Undo")
	assert.Equal(t, "Fig paste, coarse", name())
	b.menu("Edit", "Undo")
	assert.Equal(t, "Fig paste", name())
	assert.True(t, b.item("Edit", "Undo").Disabled)
	b.menu("Edit", "Redo")
	b.menu("Edit", "Redo")
	assert.Empty(t, name())
}
