package written_test

import (
	"os"
	"strings"
	"testing"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// BenchmarkLists reads one of the sets as a whole, list by list, and tells what a line takes.
func BenchmarkLists(b *testing.B) {
	data, err := os.ReadFile("testdata/fresh22.txt")
	if err != nil {
		b.Fatal(err)
	}
	var texts []string
	lines := 0
	for _, list := range strings.Split(string(data), "\n== ") {
		var text []string
		for _, line := range strings.Split(list, "\n")[1:] {
			if said, _, ok := strings.Cut(line, " => "); ok {
				text = append(text, said)
			}
		}
		texts, lines = append(texts, strings.Join(text, "\n")), lines+len(text)
	}
	r := written.New(market.Library(b), written.Eggs{System: "US", Size: "large"})
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		for _, text := range texts {
			r.Read(text)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*lines), "µs/line")
}
