package main

import (
	"flag"
	"fmt"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	checks "ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/userdata"
)

// The bars are those of
//
//	go test ./cmd/ripplecalc -run TestMutated -mutants 20000 -mutantdesigns 100000 -v
var (
	mutants       = flag.Int("mutants", 300, "how many mutated notebooks, kitchens, own ingredients and prices are read, of each")
	mutantDesigns = flag.Int("mutantdesigns", 600, "how many mutated designs are read and evaluated")
	mutantSeed    = flag.Int64("mutantseed", 15, "which mutants those are")
)

// hurts are put where a mutant is hurt: what YAML, numbers and terminals take amiss.
var hurts = strings.Split(`---|...|#| # x|"|'|:|: |,|-|- |{|}|[|]|&a |*a|!|!!binary |!!float |%|@|~|0|9|.|-1|1e9|1e308|-1e308|1e-320|.inf|-.inf|.nan|NaN|0x1F|1_000|null|true|é|漢|`+
	"\ufeff|\u202e|\u2028|\u0085|\x00|\x1b[31m|\xff|\n|\r|\r\n|\n\n|\t|  |\\u2028|<<: *a|? ", "|")

// What the stall keeps of its own; invented.
const (
	ownShelf = "version: 1\ningredients:\n  - id: fig_paste # from the market\n    name: Fig paste\n    pack: {per: 100 g, fat: 0.5, carbohydrate: 62, sugars: 50, fibre: 7, protein: 2, salt: 0.05}\n" +
		"  - id: quay_butter\n    name: Quay butter\n    fat: 82\n    protein: 1\n"
	ownPrices = "# what the stall pays\nversion: 1\ncurrency: kr # since we moved\nprices:\n  - {ingredient: sugar, price: 12.5, pack_g: 1000}\n" +
		"  - ingredient: egg_whole\n    price: 32 # they went up\n    pieces: 12\n  - {ingredient: milk_whole, price: 11, pack_ml: 1000, note: Tuesdays}\n"
)

// mutant is a text hurt in a place or three: a line lost, doubled or cut, signs put
// in, a number made another, a bit turned.
func mutant(r *rand.Rand, text string) []byte {
	lines := strings.SplitAfter(text, "\n")
	for range 1 + r.Intn(3)*r.Intn(2) {
		i, j := r.Intn(len(lines)), r.Intn(len(lines))
		at := r.Intn(len(lines[i]) + 1)
		switch r.Intn(8) {
		case 0:
			lines[i] = ""
		case 1:
			lines[i] += lines[j]
		case 2:
			lines[i] = lines[j]
		case 3:
			lines[i] = lines[i][:at]
		case 4:
			lines[i] = lines[i][:at] + hurts[r.Intn(len(hurts))] + lines[i][at:]
		case 5, 6:
			lines[i] = digits.ReplaceAllStringFunc(lines[i], func(was string) string {
				return []string{was, "0", "-1", "1", "7.5", "55", "420", "-18", "3e5", "1e-9", "1e308", "5e-324", ".inf", ".nan", "1_000", "0x1F"}[r.Intn(16)]
			})
		case 7:
			if b := []byte(lines[i]); at < len(b) {
				b[at] ^= 1 << r.Intn(8)
				lines[i] = string(b)
			}
		}
	}
	return []byte(strings.Join(lines, ""))
}

var (
	digits = regexp.MustCompile(`[0-9.]+`)
	// placed is a refusal that names file and line, or what the whole file lacks; keyed one that names the key too.
	placed = regexp.MustCompile(`mutant\.yaml(:|: line )\d+: |mutant\.yaml: [a-z_.]+: is missing`)
	keyed  = regexp.MustCompile(`\d+: .*: `)
)

func TestMutatedFilesAreReadOrRefused(t *testing.T) {
	checks.Long(t)
	m := model.New(market.Library(t))
	full := batch.Batch{ID: "b", FreezerC: batch.Of(-18), Photographs: []string{"cut.jpg"}, Words: "windy"}
	for _, e := range batch.Entries() {
		if v, ok := e.Of(&full).(*batch.Measured); ok && !strings.HasPrefix(e.Path, "forecast.") {
			v.Put((e.Min+e.Max)/2, true)
		}
	}
	notes, err := batch.Encode(full)
	require.NoError(t, err)
	kitchens, err := cold.EncodeProfiles(cold.BuiltIn()[1:3])
	require.NoError(t, err)
	read := func(paths ...string) (all []string) {
		for _, pattern := range paths {
			found, err := filepath.Glob(pattern)
			require.NoError(t, err)
			for _, p := range found {
				data, err := os.ReadFile(p)
				require.NoError(t, err)
				all = append(all, string(data))
			}
		}
		require.NotEmpty(t, all)
		return all
	}
	for _, c := range []struct {
		what  string
		count int
		from  []string
		read  func(t *testing.T, path string) error
	}{
		{"designs", *mutantDesigns, read("../../assets/demos/*.yaml", "../../testdata/designs/*.yaml"), func(t *testing.T, path string) error {
			f, err := designfile.LoadWith(path, m.Library())
			if err != nil {
				return err
			}
			r, err := m.Evaluate(f.Design)
			if err == nil {
				require.Empty(t, unsound(reflect.ValueOf(r), "result"), "%s", f.Bytes())
				for _, x := range figure.Beside { // bands are worked out where somebody asks
					v := x.Row.Of(&r, x.Column)
					slack := 1e-9 * math.Abs(v.Value)
					require.False(t, v.Banded() && (v.Low > v.Value+slack || v.High < v.Value-slack || math.IsInf(v.Low, 0)), "%s %+v of %s", x.Key, v, f.Bytes())
				}
			}
			return nil // what cannot be evaluated is refused by evaluate, in words of its own
		}},
		{"notebooks", *mutants, []string{string(notes) + string(notes)}, func(_ *testing.T, path string) error { _, err := batch.Load(path); return err }},
		{"kitchens", *mutants, []string{string(kitchens)}, func(_ *testing.T, path string) error { _, err := cold.LoadProfiles(path); return err }},
		{"own ingredients", *mutants, []string{ownShelf}, func(_ *testing.T, path string) error { _, err := userdata.LoadIngredients(path); return err }},
		{"prices", *mutants, []string{ownPrices}, func(_ *testing.T, path string) error { _, err := userdata.LoadPrices(path); return err }},
	} {
		t.Run(c.what, func(t *testing.T) {
			r := rand.New(rand.NewSource(*mutantSeed))
			path := filepath.Join(t.TempDir(), "mutant.yaml")
			taken, slowest, largest := 0, time.Duration(0), uint64(0)
			c.from = slices.DeleteFunc(c.from, func(text string) bool {
				require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
				return c.read(t, path) != nil
			})
			require.NotEmpty(t, c.from)
			refused := map[string]int{}
			for range c.count {
				text := mutant(r, c.from[r.Intn(len(c.from))])
				require.NoError(t, os.WriteFile(path, text, 0o600))
				var before, after runtime.MemStats
				runtime.ReadMemStats(&before)
				began := time.Now()
				err := c.read(t, path)
				slowest = max(slowest, time.Since(began))
				runtime.ReadMemStats(&after)
				largest = max(largest, after.TotalAlloc-before.TotalAlloc)
				if err == nil {
					taken++
					continue
				}
				said := strings.TrimPrefix(err.Error(), filepath.Dir(path)+"/")
				require.Regexp(t, placed, said, "%q", text)
				if !keyed.MatchString(said) {
					refused[kindOf(said)]++
				}
			}
			require.Less(t, largest, uint64(256<<20), "bytes asked for in all by one file")
			t.Logf("%d read, %d of them taken; the slowest %v, at most %.1f MB asked for", c.count, taken, slowest.Round(time.Millisecond), float64(largest)/1e6)
			for k, n := range refused { // that have no key to name
				t.Logf("%6d %s", n, k)
			}
		})
	}
}

// kindOf is a refusal without its numbers and quotations.
func kindOf(said string) string {
	said = regexp.MustCompile(`"[^"]*"|“[^”]*”`).ReplaceAllString(said, "…")
	return fmt.Sprintf("%.110s", regexp.MustCompile(`\d+`).ReplaceAllString(said, "N"))
}

// unsound names the first number in v that is infinite, or a negative or missing mass; ""
// for none. Other figures may be NaN, which is how a result says that nobody knows.
func unsound(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		name := path[strings.LastIndex(path, ".")+1:]
		mass := !strings.Contains(name, "Per") && (strings.HasSuffix(name, "G") || strings.HasSuffix(name, "ML") || name == "Grams")
		unbounded := name == "Most" || name == "High" || strings.HasPrefix(name, "Below") // nobody knows how much more
		if x := v.Float(); math.IsInf(x, 0) && !unbounded || mass && !(x >= 0) {
			return fmt.Sprintf("%s is %g", path, x)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.Name == "Slopes" || !f.IsExported() { // by how much a figure rises or falls; a law's coefficients
				continue
			}
			if said := unsound(v.Field(i), path+"."+v.Type().Field(i).Name); said != "" {
				return said
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if said := unsound(v.Index(i), fmt.Sprintf("%s[%d]", path, i)); said != "" {
				return said
			}
		}
	}
	return ""
}
