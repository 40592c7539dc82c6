package designfile

import (
	"flag"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/design"
)

// The count of the full run is 100 000:
//
//	go test ./internal/work/designfile -run Mutants -mutants 100000 -mutantseed 7
var (
	mutants     = flag.Int("mutants", 1000, "how many readable mutants TestMutantsAreWrittenBack changes")
	mutantsSeed = flag.Int64("mutantseed", 20, "which mutants those are")
)

// breaks are all that the parser takes for the end of a line.
var breaks = []string{"\n", "\r\n", "\r", "\u0085", "\u2028", "\u2029", "\r\r\n", "\n\r"}

// odd is what a mutant gets where it is hurt.
var odd = append([]string{"#", " #", "# é漢😀\n", " ", "\t", "\"", "'", "\\", ":", ": ", ",", "-", "- ", "{", "}", "[", "]", "|", ">", "&a ", "*a", "!", "%", "@",
	"0", "9", ".", "é", "漢", "😀", "\ufeff", "\u202e", "\x00", "\x1b", "\xff", "~", "\n\n", "\\u2028", "--- ", "...\n", "? "}, breaks...)

// originals are the designs that mutants come from.
func originals(t testing.TB) [][]byte {
	t.Helper()
	var all [][]byte
	for _, pattern := range []string{designs + "*.yaml", "../../../assets/demos/*.yaml"} {
		paths, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, paths)
		for _, path := range paths {
			data, err := os.ReadFile(path)
			require.NoError(t, err)
			if _, err := Decode(path, data); err == nil {
				all = append(all, data)
			}
		}
	}
	return append(all, []byte(example), []byte(quoted))
}

// quoted holds text in every style, with breaks inside.
const quoted = "ripplewright: 1 # first\nname: 'Quay''s own'\nnotes: \"one\u2028two\u2028three\"   # kept\n" +
	"serving: {temperature_c: -13} # cold\n# between\nblend: {dense_colour: \"#d9a441\", strokes: 3}\n" +
	"dense: {lines: [{ingredient: 'sugar', grams: 10, note: \"a\\tb\"}, {yolks: 2}]} # last\n" +
	"foam:\n  lines:\n  - ingredient: sugar   # sweet\n    grams: 5\n    note: |\n      two\n      lines\n"

func mutate(r *rand.Rand, data []byte) []byte {
	text := slices.Clone(data)
	if r.Intn(2) == 0 { // every line ends otherwise
		text = []byte(strings.ReplaceAll(string(text), "\n", breaks[r.Intn(len(breaks))]))
	}
	for n := r.Intn(4); n >= 0; n-- {
		at := r.Intn(len(text) + 1)
		if r.Intn(2) == 0 { // at the end of a line, where most breaks are
			if i := strings.IndexAny(string(text[at:]), "\n\r"); i >= 0 {
				at += i
			}
		}
		to := min(at+[]int{0, 0, 0, 1, 1, 3, 20}[r.Intn(7)], len(text))
		text = slices.Concat(text[:at], []byte(odd[r.Intn(len(odd))]), text[to:])
	}
	return text
}

// another returns d with one value changed, and where.
func another(r *rand.Rand, d design.Design) (design.Design, string) {
	for {
		fields := design.Fields()
		f := fields[r.Intn(len(fields))]
		switch p := f.At(&d).(type) {
		case *float64:
			v := min(f.Min+math.Round(r.Float64()*(min(f.Max, 1000)-f.Min)*10)/10, f.Max)
			if v == *p {
				continue
			}
			*p = v
		case *int:
			*p = int(f.Min) + (*p-int(f.Min)+1)%int(f.Max-f.Min)
		case *int64:
			*p += 1 + r.Int63n(1000)
		case *string:
			switch {
			case f.Path == "notes":
				*p += " and " + odd[r.Intn(len(odd)-len(breaks))]
				if len(design.Validate(d)) > 0 {
					*p = "changed"
				}
			case f.Path == "name":
				*p = "Changed"
			case f.Choices != nil && f.Path != "eggs.system":
				*p = f.Choices[r.Intn(len(f.Choices))]
			default:
				continue
			}
		}
		if n := len(d.Dense.Lines); n > 0 && r.Intn(4) == 0 && d.Dense.Lines[n-1].CountOf == "" {
			d = d.WithGrams(design.DensePart, n-1, float64(1+r.Intn(999)))
		}
		if r.Intn(6) == 0 {
			d = d.WithLineAdded(design.SyrupPart, design.Line{Ingredient: "honey", Grams: 7, Note: "added"})
		}
		return d, f.Path
	}
}

// comments returns what the comments of a text say, sorted.
func comments(data []byte) []string {
	n, err := yamltext.Document(yamltext.Unix(data))
	if err != nil {
		return nil
	}
	var all []string
	each(n, func(n *yaml.Node) {
		for _, c := range []string{n.HeadComment, n.LineComment, n.FootComment} {
			all = append(all, strings.Fields(c)...)
		}
	})
	slices.Sort(all)
	return all
}

// holds reports whether all of some words are among others, each as often; both
// sorted. Between odd ends of lines the parser overlooks a comment that is in the
// text all the same, and sees it once the file is written again.
func holds(all, some []string) bool {
	i := 0
	for _, s := range some {
		for i < len(all) && all[i] < s {
			i++
		}
		if i == len(all) || all[i] != s {
			return false
		}
		i++
	}
	return true
}

// inPlaceBut reports whether text has every line of data but at most four, in
// their order: a line is a value that changed, or several that were one.
func inPlaceBut(data, text []byte) bool {
	was, is := yamltext.LinesOf(data), yamltext.LinesOf(text)
	gone, at := 0, 1
	for i := 1; i <= was.Count(); i++ {
		line := string(data[was.Start(i):was.Start(i+1)])
		found := false
		for j := at; j <= is.Count() && !found; j++ {
			if found = string(text[is.Start(j):is.Start(j+1)]) == line; found {
				at = j + 1
			}
		}
		if !found {
			gone++
		}
	}
	return gone <= 4
}

func TestMutantsAreWrittenBack(t *testing.T) {
	of := originals(t)
	r := rand.New(rand.NewSource(*mutantsSeed))
	count := *mutants
	if testing.Short() {
		count = 300
	}
	lost, anew := 0, 0
	for done := 0; done < count; {
		data := mutate(r, of[r.Intn(len(of))])
		if _, err := yamltext.Document(data); err != nil {
			continue // without a search for the line at fault
		}
		f, err := Decode("mutant", data)
		if err != nil {
			continue
		}
		done++
		same, err := f.Encode(f.Design)
		require.NoError(t, err)
		require.Equal(t, data, same, "an unchanged design changed the file")
		d, path := another(r, f.Design)
		if d.Equal(f.Design) {
			continue
		}
		text, err := f.Encode(d)
		require.NoError(t, err, "%s of %q", path, data)
		got, err := Decode("again", text)
		require.NoError(t, err, "%s of %q\n%q", path, data, text)
		require.True(t, got.Design.Equal(d) || equalButForOwn(got.Design, d), "%s of %q\n%q", path, data, text)
		if path != "notes" && !inPlaceBut(data, text) {
			anew++
			if anew < 4 {
				t.Errorf("%s of %q\nwrote %q", path, data, text)
			}
		}
		if before, after := comments(data), comments(text); !holds(after, before) {
			lost++
			if lost < 4 {
				t.Errorf("%s of %q\ncomments were %q\nare %q\nwrote %q", path, data, before, after, text)
			}
		}
	}
	if lost+anew > 0 {
		t.Errorf("of %d, %d lost comments, %d were written anew", count, lost, anew)
	}
}
