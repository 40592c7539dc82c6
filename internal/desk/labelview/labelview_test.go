package labelview

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func food(t *testing.T, d design.Design) label.Food {
	t.Helper()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return r.Food(d)
}

// The forms are those of 21 CFR 101.9(b)(6) and (b)(12): the container decides, and
// from 150 to 200 % of the reference amount the maker may.
func TestTheFormIsTheMakersWhereTheRulesLeaveIt(t *testing.T) {
	for ml, want := range map[float64][]string{
		160: {"Vertical", "Tabular"}, 300: {"Vertical", "Tabular", "Two columns"}, 400: {"Two columns"},
	} {
		d := market.Honey()
		d.Tubs.VolumeML, d.Tubs.FillPercent = ml, 100
		l, names, form, err := Label(food(t, d), label.US, "Two columns")
		require.NoError(t, err)
		assert.ElementsMatch(t, want, names)
		assert.Contains(t, names, form)
		assert.Equal(t, form == "Two columns", l.Columns == "dual", ml)
		_, names, form, err = Label(food(t, d), label.EU, "Tabular")
		require.NoError(t, err)
		assert.Equal(t, []string{"Vertical"}, names)
		assert.Equal(t, card.Vertical, FormNamed(form))
	}
	_, _, _, err := Label(label.Food{}, label.US, "")
	assert.Error(t, err)
}

func TestThePanelHasEveryLineUnderItsHeads(t *testing.T) {
	for _, region := range []label.Region{label.US, label.EU} {
		l, _, _, err := Label(food(t, market.Hazelnut()), region, "")
		require.NoError(t, err)
		heads, rows := Panel(l)
		require.Len(t, rows, len(l.Lines))
		for i, row := range rows {
			assert.Len(t, row.Cells, len(heads))
			assert.Equal(t, l.Lines[i].Name, strings.TrimSpace(row.Name))
			for _, cell := range row.Cells {
				assert.NotEmpty(t, cell, "a dash would say unknown")
			}
		}
		assert.Contains(t, Per(l), map[label.Region]string{label.US: "Serving size", label.EU: "per 100 g"}[region])
	}
}

func TestRemarksAndStatementsEndWhereThePageDoes(t *testing.T) {
	many := strings.Split(strings.Repeat("x ", 40), " ")
	short := Remarks(many)
	assert.Len(t, short, mostRemarks+1)
	assert.Equal(t, say.MoreWarnings(len(many)-mostRemarks), short[mostRemarks])
	assert.Equal(t, many[:3], Remarks(many[:3]))

	l := &label.Label{Ingredients: []label.Run{{Text: "cream (milk), "}, {Text: "egg", Emphasis: true}, {Text: " yolk, sugar"}}}
	runs, all := Statement(l, 100)
	assert.Equal(t, l.Ingredients, runs)
	assert.True(t, all)
	runs, all = Statement(l, 20)
	assert.False(t, all)
	text := ""
	for _, r := range runs {
		text += r.Text
	}
	assert.Equal(t, "cream (milk), egg y…", text)
}

func TestRulesSayWhetherTheyAreMetAndWhy(t *testing.T) {
	l, _, _, err := Label(food(t, market.Honey()), label.US, "")
	require.NoError(t, err)
	heads, names := Names(say.Style{}, l)
	require.Len(t, names, len(heads))
	n := 0
	for _, group := range append(names, Claims(say.Style{}, l)) {
		for _, r := range group {
			n++
			assert.Regexp(t, `^(✓ met|✗ not met|\? depends on an unknown figure) — `, r.Title)
			assert.NotEmpty(t, r.Conditions, r.Title)
		}
	}
	assert.Equal(t, len(l.Names)+len(l.Claims), n)
}

func TestWhatIsIncompleteBearsThePanelsMark(t *testing.T) {
	l := &label.Label{Warnings: flaw.Remarks{flaw.Say("Fat is incomplete."), flaw.Say("May hold nuts.")}, Gaps: 1}
	assert.Equal(t, []string{label.IncompleteMark + " Fat is incomplete.", "May hold nuts."}, Warnings(l))
}
