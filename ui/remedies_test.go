package ui

import (
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// spoiled makes the design's custard too hard and waits for the remedies.
func (b *bed) spoiled() {
	b.t.Helper()
	d := b.Design()
	d.Serving.TemperatureC = -20
	b.Commit(d, "cold")
	require.True(b.t, b.happens(func() bool { return b.bench.mender.Found() != nil && len(b.bench.mender.Found().List) > 0 }))
}

func TestARemedyIsOneClickAwayAndOneStepOfUndo(t *testing.T) {
	b := newBed(t)
	assert.True(t, b.bench.mend.Disabled(), "a good tub needs none")
	b.spoiled()
	require.False(t, b.bench.mend.Disabled())
	require.False(t, b.Result().Verdict.Good)
	spoiled := b.Design()

	test.Tap(b.bench.mend)
	words := b.dialogTexts()
	assert.Contains(t, words, say.RemediesTitle.String())
	assert.Contains(t, words, "→")
	b.press(say.Apply.String())
	b.frame()
	assert.True(t, b.Result().Verdict.Good)
	assert.False(t, spoiled.Equal(b.Design()))
	assert.Nil(t, b.win.Canvas().Overlays().Top())
	b.menu("Edit", "Undo")
	assert.True(t, spoiled.Equal(b.Design()), "one step takes it back")
}

func TestALockedLineStaysAsItIs(t *testing.T) {
	b := newBed(t)
	b.spoiled()
	list := b.bench.dense.lists[0]
	for i := range list.rows {
		list.lock(i)
	}
	assert.Equal(t, lockIcon, list.rows[0].more.Icon)
	require.True(t, b.happens(func() bool { return b.bench.mender.Found() != nil }))
	for _, p := range b.bench.mender.Found().List {
		for _, c := range p.Changes {
			assert.False(t, c.Ingredient != nil && c.Part == design.DensePart && c.Line >= 0, "%+v", c)
		}
	}
	list.lock(0)
	assert.Equal(t, theme.MoreVerticalIcon(), list.rows[0].more.Icon)
}
