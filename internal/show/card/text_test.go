package card

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/say"
)

func TestACardHoldsTheBeginningOfLongNotes(t *testing.T) {
	assert.Equal(t, []string{"Stir.", "Wait."}, notesOf("Stir.\n\nWait."))
	for _, long := range []string{strings.Repeat("stir ", mostNotes), strings.Repeat("x", mostNotes+1), strings.Repeat("x\n\n", mostParagraphs+1)} {
		got := notesOf(long)
		assert.Equal(t, say.NotesGoOn.String(), got[len(got)-1])
		assert.LessOrEqual(t, len(got), mostParagraphs+1)
		assert.LessOrEqual(t, utf8.RuneCountInString(strings.Join(got[:len(got)-1], "")), mostNotes)
	}
	for most, want := range map[int]string{1: "…", 2: "柚…", 3: "柚子蜜", 9: "柚子蜜"} {
		assert.Equal(t, want, cut("柚子蜜", most))
	}
	assert.Equal(t, "xxx", shortened(body, "xxx", body.Width("xxx")))
	for _, width := range []float64{4, 17, 60} {
		s := shortened(body, strings.Repeat("swirl ", 5000), width)
		assert.True(t, strings.HasSuffix(s, "…"))
		assert.LessOrEqual(t, body.Width(s), width)
		assert.Greater(t, body.Width(s), width-3)
	}
}
