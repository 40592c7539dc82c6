package main

import (
	"fmt"
	"strings"

	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
)

// helpBatches describes the file of batches from the table that checks it.
func helpBatches() string {
	var b strings.Builder
	b.WriteString(say.T(`The batches of NAME.yaml are in NAME.batches.yaml beside it: YAML documents, each from a
line of three dashes to a line of three dots. A later entry with the same name adds to
its batch, and what it says counts. Leave out what nobody has measured.

  ---
  batch: quay-3
  made: 2026-11-28
  custard: {cup_g: 178}
  scooped: {after_min: 14}
  ate: {hardness: scoopable, icy: smooth}
  ...

`))
	for _, f := range batch.Entries() {
		if strings.HasPrefix(f.Path, "forecast.") {
			continue
		}
		fmt.Fprintf(&b, "  %-22s %s\n", f.Path, say.Of(f.About))
		if what := say.Said(f.Allowed()); what != "" {
			fmt.Fprintf(&b, "  %-22s   %s\n", "", what)
		}
	}
	b.WriteString(say.T(`
forecast holds what was expected on that day; ripplecalc batch add writes it.
A setting with a point stands under its first word, or as "custard.cup_g=178" for add.
What can be in off: %s, or %s.
`, strings.Join(factorCodes(), ", "), batch.Nothing))
	return b.String()
}
