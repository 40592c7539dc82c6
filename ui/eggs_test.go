package ui

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/whole"
)

func TestWholeEggsAreOneStepSeenBefore(t *testing.T) {
	b := newBed(t)
	was := b.Design()
	require.False(t, whole.Fit(b.Result().Eggs))
	b.menu("Edit", "Use whole eggs…")
	require.True(t, b.happens(func() bool { return strings.Contains(b.dialogTexts(), "Custard made") }))
	text := unbroken(b.dialogTexts())
	for _, each := range []string{"Custard made", "Hardness of the foam", "Sweetness of the tub", "Eggs to crack", "Both recipes stay"} {
		assert.Contains(t, text, unbroken(each))
	}
	assert.True(t, was.Equal(b.Design()), "nothing has changed yet")
	b.press("Use it")
	assert.True(t, whole.Fit(b.Result().Eggs))
	require.True(t, b.Session.Undo())
	assert.True(t, was.Equal(b.Design()), "one step back")

	b.menu("Edit", "Use whole eggs…")
	require.True(t, b.happens(func() bool { return strings.Contains(b.dialogTexts(), "Custard made") }))
	b.press("Cancel")
	assert.True(t, was.Equal(b.Design()))
	assert.Nil(t, b.win.Canvas().Overlays().Top())
}
