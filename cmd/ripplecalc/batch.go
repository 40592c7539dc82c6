package main

import (
	"bytes"
	"context"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/versions"
)

var batchCommand = &command{
	name:  "batch",
	usage: "batch add FILE [KEY=VALUE...] [--entry FILE] [--json] | list FILE [--csv] [--json] | learn FILE [--off NAMES] [--json]",
	short: "Writes down what happened to a batch, lists batches, and says what they teach",
	long: `
The notebook of quay.yaml is quay.batches.yaml beside it. Entries are added at its
end; nothing that is there is ever rewritten. "ripplecalc help batches" lists the keys.

  add    writes a batch down: keys and values, as freezer_c=-17.5 ate.icy=smooth, or
         an entry. batch=NAME adds to a batch that is there; without it, it is a new
         one of today. The forecast of the day is written with it
  list   each measurement beside its forecast
  learn  what the batches teach of kitchen and recipe, which measurements look like
         slips, and what to measure next

  --entry FILE  of add: YAML with such keys, - for standard input
  --csv         of list: a table for a spreadsheet
  --off NAMES   of learn: what is learnt no more from now on, as "ice hardness";
                nothing learns all again
  --json        JSON instead of text. add: file, batch, other_design, slips, ask.
                list: file, batches (each by the keys of the file, and pairs), off,
                cut_off_lines. learn: file, batches, factors (factor, unit, on, prior,
                data, value, low, high, width_left; low to high is 8 in 10), slips,
                next (minutes_out, hardness_kpa), ask
`,
	least: 2,
	most:  -1,
	flags: batchFlags,
}

// batchAsked is what the flags of batch say.
type batchAsked struct {
	json, csv  bool
	entry, off string
}

func batchFlags(c *command, flags *pflag.FlagSet) action {
	var a batchAsked
	flags.BoolVar(&a.json, "json", false, "")
	flags.BoolVar(&a.csv, "csv", false, "")
	flags.StringVar(&a.entry, "entry", "", "")
	flags.StringVar(&a.off, "off", "", "")
	verbs := map[string]struct {
		run   func(*command, *shell, []string, *batchAsked) error
		flags string // that it knows beside --json
		most  int
	}{
		"add": {addBatch, "entry", -1}, "list": {listBatches, "csv", 1}, "learn": {learnBatches, "off", 1},
	}
	return func(s *shell, words []string) error {
		verb, ok := verbs[words[0]]
		if !ok {
			return c.misused("%s is not one of add, list, learn", echo.Quoted(words[0]))
		}
		rest := words[1:]
		if verb.most > 0 && len(rest) > verb.most {
			return c.misused("%s is one argument too many", echo.Quoted(rest[verb.most]))
		}
		var strange error
		flags.Visit(func(f *pflag.Flag) {
			if f.Name != "json" && f.Name != verb.flags && !readingFlags[f.Name] {
				strange = c.misused("batch %s knows no --%s", words[0], f.Name)
			}
		})
		if strange != nil {
			return strange
		}
		return verb.run(c, s, rest, &a)
	}
}

func addBatch(c *command, s *shell, words []string, a *batchAsked) error {
	name := words[0]
	if name == "-" {
		return c.misused("a batch is written down beside a file, not beside standard input")
	}
	b, err := c.batchOf(s, a.entry, words[1:])
	if err != nil {
		return err
	}
	bench, f, _, err := openWith(s, name)
	if err != nil {
		return err
	}
	added, err := writeBatch(s, bench, f, name, b)
	if err != nil {
		return err
	}
	return s.answer(added, a.json)
}

// writeBatch writes a batch of f, the design in file name, down with its forecast, and
// keeps the version that it was made by.
func writeBatch(s *shell, bench *bench, f *designfile.File, name string, b batch.Batch) (added report.Added, err error) {
	k, err := publishedKitchen(f, "")
	if err != nil {
		return added, err
	}
	path := batch.PathOf(name)
	n, err := batch.Load(path)
	if err != nil {
		return added, err
	}
	logged, err := learn.Log(context.Background(), bench.Model, f.Design, k, &n, b, time.Now())
	if err != nil {
		return added, flaw.New("%s: %v", f.Name, err)
	}
	if err := batch.Append(path, logged.Entry, s.schemas); err != nil {
		return added, err
	}
	if !logged.OtherDesign {
		if err := versions.ForBatch(name, s.schemas.Head(f.Bytes(), schemaline.Design), logged.Entry.ID, time.Now()); err != nil {
			return added, flaw.New("the batch is written down, but no version of the design is kept: %v", err)
		}
	}
	if n, err = batch.Load(path); err != nil {
		return added, fault(err)
	}
	p := learn.For(&n, &f.Design, k)
	return report.Added{File: path, Logged: logged, Notebook: &n, Taught: &p}, nil
}

// batchOf reads what is added: a file, and keys on the command line, which win.
func (c *command) batchOf(s *shell, entry string, words []string) (batch.Batch, error) {
	var b batch.Batch
	if entry != "" {
		data, err := readEntry(s, entry)
		if err != nil {
			return b, err
		}
		if b, err = batch.DecodeEntry(say.HarmlessLine(entry), data); err != nil {
			return b, err
		}
	}
	for _, w := range words {
		key, value, ok := strings.Cut(w, "=")
		f, known := batch.EntryAt(key)
		switch {
		case !ok:
			return b, c.misused("%s is not KEY=VALUE", echo.Quoted(w))
		case !known || strings.HasPrefix(key, "forecast."):
			return b, c.misused("%s is no key of a batch; see ripplecalc help batches", echo.Quoted(key))
		}
		if wrong := f.Set(&b, value); wrong != nil {
			return b, c.misused("%s: %v", key, wrong)
		}
	}
	named := b
	if named.ID == "" {
		named.ID = "?"
	}
	if path, wrong := named.Problem(); wrong != nil {
		return b, c.misused("%s: %v", path, wrong)
	}
	return b, nil
}

func readEntry(s *shell, name string) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(io.LimitReader(s.in, batch.MaxEntry+1))
	}
	return batch.ReadEntry(name)
}

func listBatches(c *command, s *shell, files []string, a *batchAsked) error {
	if files[0] == "-" {
		return c.misused("batches are kept beside a file, not beside standard input")
	}
	path := batch.PathOf(files[0])
	n, err := batch.Load(path)
	if err != nil {
		return err
	}
	if a.csv {
		var text bytes.Buffer
		if err := batch.WriteCSV(&text, &n); err != nil {
			return fault(err)
		}
		_, err := io.WriteString(s.out, say.HarmlessPage(text.String()))
		return fault(err)
	}
	p := learn.From(&n)
	return s.answer(report.Batches{File: path, Notebook: &n, Taught: &p}, a.json)
}

func learnBatches(c *command, s *shell, files []string, a *batchAsked) error {
	if files[0] == "-" {
		return c.misused("batches are kept beside a file, not beside standard input")
	}
	bench, f, _, err := openWith(s, files[0])
	if err != nil {
		return err
	}
	k, err := publishedKitchen(f, "")
	if err != nil {
		return err
	}
	path := batch.PathOf(files[0])
	if a.off != "" {
		if err := c.turnOff(s, path, a.off); err != nil {
			return err
		}
	}
	n, err := batch.Load(path)
	if err != nil {
		return err
	}
	next, err := learn.Expect(context.Background(), bench.Model, f.Design, k, &batch.Batch{})
	if err != nil {
		return flaw.New("%s: %v", f.Name, err)
	}
	p := learn.For(&n, &f.Design, k)
	return s.answer(report.Learnt{File: path, Notebook: &n, Taught: &p, Next: next}, a.json)
}

// turnOff writes down what is not learnt from now on.
func (c *command) turnOff(s *shell, path, names string) error {
	list := strings.FieldsFunc(names, func(r rune) bool { return r == ' ' || r == ',' || r == ';' })
	for _, name := range list {
		if _, ok := learn.Named(name); !ok && !(name == batch.Nothing && len(list) == 1) {
			return c.misused("--off %s: there are %s, or %s", echo.Quoted(name), strings.Join(factorCodes(), ", "), batch.Nothing)
		}
	}
	if len(list) == 0 {
		return c.misused("--off names nothing; there are %s, or %s", strings.Join(factorCodes(), ", "), batch.Nothing)
	}
	slices.Sort(list)
	return batch.Append(path, learn.Switch(slices.Compact(list), time.Now()), s.schemas)
}

func factorCodes() []string {
	var out []string
	for f := range learn.NumFactors {
		out = append(out, f.String())
	}
	return out
}
