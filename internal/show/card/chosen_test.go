package card

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
)

// headings are words that stand on a card only where its section does.
var headings = map[Sections]string{Weights: "Foam: syrup", Steps: "How it is made", Notes: "Notes", Day: "The day, to serve at 15:00", Figures: "The figures",
	Plots: "From the freezer to the spoon", Panel: "Nutrition Facts", Cautions: "Cautions"}

func composedOf(t *testing.T, o Options) ([]*draw.List, string, error) {
	t.Helper()
	d := market.Hazelnut()
	d.Notes = "Roast the nuts dark."
	r := evaluated(t, d)
	o.Cold = timed(t, d, r)
	o, err := o.filled()
	require.NoError(t, err)
	pages, err := compose(context.Background(), d, r, contentOf(d, r, o), o)
	return pages, strings.Join(texts(pages), "\n"), err
}

func TestJustTheSectionsChosenStandOnACard(t *testing.T) {
	papers := []Paper{A4, Letter, A5}
	if testing.Short() {
		papers = papers[:1]
	}
	for one, head := range headings {
		for _, paper := range papers {
			_, text, err := composedOf(t, Options{Paper: paper, Parts: one})
			require.NoError(t, err)
			for other, words := range headings {
				assert.Equal(t, other == one, strings.Contains(text, words), "%s of %s on %s", words, head, paper)
			}
		}
	}
	got, err := ParseSections("Weights, steps")
	require.NoError(t, err)
	assert.Equal(t, Weights|Steps, got)
	for _, bad := range []string{"", "weights,", "all"} {
		_, err := ParseSections(bad)
		assert.ErrorContains(t, err, strings.Join(SectionNames(), ", "), bad)
	}
}

// A card of one page, or two, has no more; what has no room is named on it, and the
// weights and steps are never left out.
func TestACardHasNoMorePagesThanAskedFor(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	for _, paper := range []Paper{A4, Letter, A5} {
		for most := 1; most <= 2; most++ {
			pages, text, err := composedOf(t, Options{Paper: paper, Pages: most})
			if paper == A5 && most == 1 {
				require.ErrorIs(t, err, ErrPages)
				continue
			}
			require.NoError(t, err)
			assert.LessOrEqual(t, len(pages), most)
			for _, one := range []Sections{Weights, Steps} {
				assert.Contains(t, text, headings[one])
			}
			_, named, told := strings.Cut(text, "No room here for: ")
			for _, one := range spare {
				head := headings[one]
				if head == "" {
					continue
				}
				for _, x := range sections {
					if x.one == one && !strings.Contains(text, head) {
						require.True(t, told)
						assert.Contains(t, named, strings.ToLower(say.CardSection(x.name)))
					}
				}
			}
			for i, p := range pages {
				assert.Empty(t, collisions(p), "%s, page %d", paper, i+1)
			}
		}
	}
}

// Every weight and every step has a box to tick, and every reading that the process
// asks for its blank; the kitchen's pages have them in letters of 11 points or more.
func TestTheKitchensPagesAreBigAndHaveBlanks(t *testing.T) {
	for _, paper := range []Paper{A4, Letter, A5} {
		pages, text, err := composedOf(t, Options{Paper: paper, Big: true})
		require.NoError(t, err)
		for _, asked := range []string{"The custard weighs without the pan ______ g.", "The syrup reached ______ °C", "the foam reads ______ °C"} {
			assert.Contains(t, strings.Join(strings.Fields(text), " "), asked, paper)
		}
		for i, p := range pages {
			assert.Empty(t, collisions(p), "%s, page %d", paper, i+1)
			for _, w := range p.Texts {
				x, y := face.Start(w)
				if y > 20 && y < p.H-footSpace { // beside the running head and the foot
					assert.GreaterOrEqual(t, w.Size/typeset.Point, kitchenSmall-1e-9, "%q", w.S)
				}
				assert.LessOrEqual(t, x+w.Size*face.Width(w.Face, w.S), p.W-marginOf(paper)+0.1, "%s: %q", paper, w.S)
			}
		}
	}
}

func TestColumnsKeepTheMarginsOfEveryPaper(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	for name, o := range map[string]Options{"a5": {Paper: A5, Region: label.US}, "eu": {Paper: A5, Region: label.EU}, "one": {Paper: A4, Pages: 1}} {
		pages, _, err := composedOf(t, o)
		require.NoError(t, err)
		for i, p := range pages {
			assert.Empty(t, collisions(p), "%s, page %d", name, i+1)
			for _, w := range p.Texts {
				x, y := face.Start(w)
				m := marginOf(o.Paper)
				assert.True(t, x >= m-0.1 && x+w.Size*face.Width(w.Face, w.S) <= p.W-m+0.1 && y <= p.H-9, "%s, page %d: %q at %.1f, %.1f", name, i+1, w.S, x, y)
			}
		}
	}
}
