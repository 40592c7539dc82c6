package proofs

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/check"
	"ripplewright/internal/check/astray"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/testdata"
)

func TestEveryCheckIsListedDrawnAndTabulated(t *testing.T) {
	check.Long(t)
	rows, err := validate.Run(testdata.Tables, market.Library(t))
	require.NoError(t, err)
	all := Summarize(say.Style{}, rows)
	listed, head := 0, ""
	for _, e := range all.Entries {
		if e.Row == nil {
			head = e.Head
			assert.NotEmpty(t, e.Under, head)
			assert.Empty(t, e.Mark())
			continue
		}
		listed++
		for _, k := range Order() {
			assert.Equal(t, k.Kind == e.Row.Kind, k.Name == head, "%s under %s", e.Row.Table, head)
		}
		drawn := 0
		for _, s := range (Dress{}).Agreement(e.Row).Series {
			if s.Marker != draw.NoMarker {
				drawn += len(s.X)
			}
		}
		assert.GreaterOrEqual(t, drawn, len(e.Row.Pairs), e.Row.Table)
		errors := 0
		for _, s := range (Dress{}).Errors(e.Row).Series {
			errors += len(s.X)
		}
		assert.Equal(t, len(e.Row.Pairs), errors, e.Row.Table)
		assert.Len(t, Pairs(say.Style{}, e.Row), len(e.Row.Pairs), e.Row.Table)
	}
	assert.Equal(t, len(rows), listed, "each check is listed once")
	inGerman(t, rows)
}

// inGerman looks for English in what is told of checks where German is spoken, but for
// names of tables, sources and points.
func inGerman(t *testing.T, rows []validate.Row) {
	require.True(t, tongue.Speak("de"))
	defer tongue.Speak(tongue.English)
	for i := range rows {
		r := &rows[i]
		note := say.Said(r.Note)
		if r.Table == "recipe_reconstructions (too small to declare)" {
			note = "" // it names records
		}
		assert.Empty(t, astray.English(note), r.Table)
		told := []string{say.Said(r.Title()), say.Of(string(r.Unit)), say.Of(string(r.XLabel)), say.Of(string(r.YLabel))}
		for k, english := range []string{r.Title().String(), string(r.Unit), string(r.XLabel), string(r.YLabel)} {
			assert.Empty(t, astray.English(told[k]), r.Table)
			if strings.Count(english, " ") > 1 {
				assert.NotEqual(t, english, told[k], r.Table)
			}
		}
	}
}

func TestAMissIsCountedAndMarked(t *testing.T) {
	rows := []validate.Row{
		{Table: "a", Kind: validate.Independent, Bar: 1, MaxAbsError: 0.5, Unit: "K", Points: 3, Pass: true},
		{Table: "b", Kind: validate.Independent, Bar: 1, MaxAbsError: 2, Unit: "K", Points: 1},
		{Table: "c", Kind: validate.Remembered, Bar: math.Inf(1), MaxAbsError: 2, Unit: "%", Points: 5, Pass: true},
	}
	all := Summarize(say.Style{}, rows)
	assert.True(t, all.Failed)
	assert.Equal(t, "1 of 2 checks are NOT within their limits. One more has no limit: it only compares.", all.Text)
	assert.Equal(t, []string{"2", "1", "4"}, all.Kinds[0].Cells)
	require.Len(t, all.Entries, 6, "kinds without checks have no head")
	for i, want := range []struct{ mark, line string }{
		{"", say.RestUnder.String()}, {"", Order()[0].Under}, {"✓", "3 points, largest error 0.5 of 1 K"}, {"✗", "NOT MET: 1 point, largest error 2 of 1 K"},
		{"", "published figures that we did not look up again: no proof"}, {"–", "5 points, largest error 2 %, no limit"},
	} {
		assert.Equal(t, want.mark, all.Entries[i].Mark())
		assert.Equal(t, want.line, all.Entries[i].Line(say.Style{}))
	}
	assert.Contains(t, Verdict(say.Style{}, &rows[1]), "✗ NOT MET: largest error 2 of 1 K")
	assert.Contains(t, Verdict(say.Style{}, &rows[2]), "Shown for comparison")
}
