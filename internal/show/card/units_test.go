package card

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
	"ripplewright/internal/check/astray"
	"ripplewright/internal/check/market"
)

// Every word of every form of the card follows the units, but for the panel, whose
// units are those of its rules.
func TestEveryFormOfTheCardFollowsTheUnits(t *testing.T) {
	check.Long(t)
	for name, d := range market.Demos(t) {
		r := evaluated(t, d)
		times := timed(t, d, r)
		for system, style := range astray.Systems {
			o, err := Options{Style: style, Cold: times, Parts: allSections &^ Panel, DPI: 30}.filled()
			require.NoError(t, err)
			c := contentOf(d, r, o).only(o.Parts)
			o.Big = true
			forms := map[string]string{"markdown": string(markdown(c)), "kitchen": strings.Join(texts(kitchenPages(c, A4)), "\n")}
			phone, err := phonePage(c, o.Parts)
			require.NoError(t, err)
			_, page, _ := strings.Cut(string(phone), "</style>")
			forms["phone"] = strings.NewReplacer("<br><small>", " (", "</small>", ")").Replace(page)
			o.Big = false
			pages, err := compose(context.Background(), d, r, contentOf(d, r, o), o)
			require.NoError(t, err)
			forms["columns"] = strings.Join(texts(pages), "\n")
			for form, text := range forms {
				for _, line := range strings.Split(text, "\n") {
					assert.Empty(t, astray.In(line, style), "%s, %s, %s: %s", name, system, form, line)
					if form != "columns" && form != "kitchen" { // lines of which may end within a quantity
						assert.Empty(t, astray.Bare(line, style), "%s, %s, %s: %s", name, system, form, line)
					}
				}
			}
		}
	}
}
