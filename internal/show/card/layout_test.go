package card

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// cards are designs and options that strain the layout.
func cards(t testing.TB) map[string][]*draw.List {
	if composed != nil {
		return composed
	}
	small := market.Hazelnut()
	small.Tubs = design.Tubs{Count: 40, VolumeML: 120, FillPercent: 95, Shape: design.ShapeRound}
	double := market.Hazelnut()
	double.Tubs.VolumeML = 400
	freezing := market.Hazelnut()
	freezing.Serving.TemperatureC = -24
	custard := market.Hazelnut()
	custard.Foam.Lines, custard.Foam.Syrup.Lines = nil, nil
	custard.Blend.FoamVolumePercent = 0
	one := market.Hazelnut()
	one.Tubs = design.Tubs{Count: 1, VolumeML: 30, FillPercent: 60, Shape: design.ShapeRound}
	one.Name = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft"
	one.Notes = "Мёд и орех. Μέλι."
	catering := forty(t)
	catering.Tubs = design.Tubs{Count: 500, VolumeML: 20000, FillPercent: 96, Shape: design.ShapeRectangle}
	foam := market.Hazelnut()
	foam.Dense.Lines = nil
	foam.Blend.FoamVolumePercent = 100
	out := map[string][]*draw.List{}
	for name, d := range map[string]design.Design{"market": market.Hazelnut(), "crowded": crowded(t), "small": small, "double": double, "cold": freezing, "custard": custard, "one": one, "catering": catering, "foam": foam} {
		r := evaluated(t, d)
		times := timed(t, d, r)
		for _, o := range []Options{{Region: label.US, Paper: A4, Cold: times}, {Region: label.EU, Paper: Letter, Cold: times}, {Region: label.US, Paper: Letter, Cold: times, Style: say.Customary}} {
			out[fmt.Sprintf("%s %s %s", name, o.Region, o.Paper)] = cardPages(context.Background(), d, r, contentOf(d, r, o), o)
		}
	}
	composed = out
	return out
}

var composed map[string][]*draw.List // once, since the pictures take their time

// TestNoWordStandsOnAnother compares the boxes of all texts of a page.
func TestNoWordStandsOnAnother(t *testing.T) {
	for name, pages := range cards(t) {
		for i, s := range pages {
			for _, c := range collisions(s) {
				t.Errorf("%s, page %d: %s", name, i+1, c)
			}
		}
	}
}

func collisions(s *draw.List) []string {
	type box struct {
		x0, y0, x1, y1 float64
		text           string
	}
	var boxes []box
	var out []string
	for _, w := range s.Texts {
		x, y := face.Start(w)
		b := box{x + 0.05, y - face.XHeight*w.Size, x + w.Size*face.Width(w.Face, strings.TrimRight(w.S, " ")) - 0.05, y, w.S}
		for _, o := range boxes {
			if b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 {
				out = append(out, fmt.Sprintf("%q stands on %q", b.text, o.text))
			}
		}
		boxes = append(boxes, b)
	}
	return out
}

func TestWordsKeepTheMargins(t *testing.T) {
	for name, pages := range cards(t) {
		for i, s := range pages {
			for _, w := range s.Texts {
				x, y := face.Start(w)
				assert.True(t, x >= tight-0.1 && x+w.Size*face.Width(w.Face, w.S) <= s.W-tight+0.1 && y <= s.H-9, "%s, page %d: %q at %.1f, %.1f", name, i+1, w.S, x, y)
			}
		}
	}
}

func TestNotesKeepTheirParagraphsAndStandOnce(t *testing.T) {
	for _, times := range []int{1, 20, 900} { // in the head, in a gap or on a page, over pages
		d := market.Hazelnut()
		d.Notes = strings.Repeat("Quaystone ", times) + "\n\nA second paragraph."
		r := evaluated(t, d)
		pages := cardPages(context.Background(), d, r, contentOf(d, r, Options{Region: label.US}), Options{Region: label.US, Paper: A4})
		all := strings.Join(texts(pages), "\n")
		assert.Equal(t, times, strings.Count(all, "Quaystone"))
		assert.Contains(t, texts(pages), "A second paragraph.", "it begins a line")
		assert.Equal(t, times < 900, len(pages) <= 3, "%d words", times)
	}
}

func TestAnOrdinaryDesignTakesThreeSides(t *testing.T) {
	all := cards(t)
	assert.LessOrEqual(t, len(all["market us a4"]), 3)
	assert.LessOrEqual(t, len(all["market eu letter"]), 3)
	assert.Greater(t, len(all["crowded us a4"]), 3)
}

// The two sides of a sheet hold all of a design of ordinary length, whatever the
// paper, the label and the units, in type that can be read.
func TestAnOrdinaryDesignTakesTheTwoSidesOfASheet(t *testing.T) {
	check.Long(t)
	for name, d := range market.Demos(t) {
		r := evaluated(t, d)
		times := timed(t, d, r)
		for _, paper := range []Paper{A4, Letter} {
			for _, region := range []label.Region{label.US, label.EU} {
				for _, style := range []say.Style{say.Usual, say.Customary} {
					o := Options{Region: region, Paper: paper, Cold: times, Style: style}
					pages := cardPages(context.Background(), d, r, contentOf(d, r, o), o)
					assert.Len(t, pages, 2, "%s, %s, %s, %v", name, paper, region, style)
					all := strings.Join(texts(pages), "\n")
					for _, s := range []string{"How it is made", "The day, to serve at 15:00", "From the freezer to the spoon", "The figures", "Cautions", "What the verdict rests on", "Check on the scale", "Notes"} {
						assert.Equal(t, 1, strings.Count(all, s), "%s, %s, %s: %s", name, paper, region, s)
					}
					for i, p := range pages {
						assert.Empty(t, collisions(p), "%s, %s, %s, page %d", name, paper, region, i+1)
						for _, w := range p.Texts {
							assert.GreaterOrEqual(t, w.Size/typeset.Point, 5.4, "%s: %q", name, w.S)
							x, y := face.Start(w)
							assert.True(t, x >= tight-0.1 && x+w.Size*face.Width(w.Face, w.S) <= p.W-tight+0.1 && y <= p.H-9, "%s: %q at %.1f, %.1f", name, w.S, x, y)
						}
					}
				}
			}
		}
	}
}
