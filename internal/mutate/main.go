package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"text/tabwriter"
	"time"
)

func main() {
	var o options
	run := flag.String("run", "model,validate,cold,balance,say,card", "tests that follow the package's own: packages by the last part of their path, or as ./cmd/ripplecalc")
	kind := flag.String("kinds", "float,compare", "what to change: "+strings.Join(kinds, ", "))
	flag.IntVar(&o.sample, "sample", 0, "how many changes to try in each package; 0 is all")
	flag.Int64Var(&o.seed, "seed", 1, "which sample")
	flag.BoolVar(&o.list, "list", false, "name the changes and run nothing")
	flag.BoolVar(&o.verbose, "v", false, "name each change that a package's tests let pass, at once, to the standard error")
	flag.DurationVar(&o.timeout, "timeout", time.Minute, "a run of tests that takes longer has noticed")
	flag.Parse()
	o.run, o.kinds = strings.FieldsFunc(*run, comma), strings.FieldsFunc(*kind, comma)
	if err := mutate(o, flag.Args(), os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

func comma(r rune) bool { return r == ',' }

type options struct {
	sample     int
	seed       int64
	list       bool
	verbose    bool
	run, kinds []string
	timeout    time.Duration
}

// pkg is what go list says of one package.
type pkg struct {
	ImportPath, Name, Dir, Export string
	GoFiles, Deps                 []string
	TestImports, XTestImports     []string
	TestGoFiles, XTestGoFiles     []string
	DepOnly                       bool
}

func (p pkg) tested() bool { return len(p.TestGoFiles)+len(p.XTestGoFiles) > 0 }

// restsOn reports whether p's tests compile the package at path.
func (p pkg) restsOn(path string) bool {
	return slices.Contains(p.Deps, path) || slices.Contains(p.TestImports, path) || slices.Contains(p.XTestImports, path)
}

func list(args ...string) ([]pkg, error) {
	var stderr bytes.Buffer
	cmd := exec.Command("go", append([]string{"list", "-json"}, args...)...)
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w\n%s", err, &stderr)
	}
	var all []pkg
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p pkg
		switch err := d.Decode(&p); {
		case errors.Is(err, io.EOF):
			return all, nil
		case err != nil:
			return nil, err
		}
		all = append(all, p)
	}
}

// score is what became of one package's changes.
type score struct {
	path          string
	tried, caught int
}

func mutate(o options, patterns []string, w io.Writer) error {
	if len(patterns) == 0 {
		return errors.New("name a package, as ./internal/matter/solution")
	}
	targets, err := list(append([]string{"-export", "-deps"}, patterns...)...)
	if err != nil {
		return err
	}
	followers, err := followers(o.run)
	if err != nil {
		return err
	}
	exports := map[string]string{}
	for _, p := range targets {
		exports[p.ImportPath] = p.Export
	}
	var scores []score
	for _, p := range targets {
		if p.DepOnly {
			continue
		}
		all, err := changes(p, exports)
		if err != nil {
			return err
		}
		all = slices.DeleteFunc(all, func(c change) bool { return !slices.Contains(o.kinds, c.kind) })
		if o.sample > 0 && o.sample < len(all) {
			rand.New(rand.NewSource(o.seed)).Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
			all = all[:o.sample]
		}
		if o.list {
			for _, c := range all {
				fmt.Fprintln(w, c.named(p))
			}
			continue
		}
		s, err := try(o, p, all, followers, w)
		if err != nil {
			return err
		}
		scores = append(scores, s)
	}
	if o.list {
		return nil
	}
	return table(scores, w)
}

// followers returns the packages that names mean, in that order: a plain name
// is the last part of a path under internal or cmd.
func followers(names []string) ([]pkg, error) {
	ours, err := list("./internal/...", "./cmd/...")
	if err != nil {
		return nil, err
	}
	var found []pkg
	for _, name := range names {
		if strings.Contains(name, "/") {
			more, err := list(name)
			if err != nil {
				return nil, err
			}
			found = append(found, more...)
			continue
		}
		before := len(found)
		for _, p := range ours {
			if filepath.Base(p.ImportPath) == name {
				found = append(found, p)
			}
		}
		if len(found) == before {
			return nil, fmt.Errorf("-run %s: no package of that name in internal or cmd", name)
		}
	}
	return found, nil
}

// try makes each change, asks p's own tests and then those of followers that
// rest on p, and writes the survivors.
func try(o options, p pkg, all []change, followers []pkg, w io.Writer) (score, error) {
	s := score{path: p.ImportPath}
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return s, err
	}
	defer os.RemoveAll(dir)
	replace, err := switches(p, all, dir)
	if err != nil {
		return s, err
	}
	overlay := filepath.Join(dir, "switches.json")
	if err := writeOverlay(overlay, replace); err != nil {
		return s, err
	}
	left := make([]int, len(all)) // numbers of what has not been caught
	for i := range left {
		left[i] = i
	}
	s.tried = len(all)
	for _, q := range append([]pkg{p}, followers...) {
		if !q.tested() || q.ImportPath != p.ImportPath && !q.restsOn(p.ImportPath) || len(left) == 0 {
			continue
		}
		t, err := build(q, overlay, dir)
		if err == nil {
			err = t.survey(5*o.timeout, dir)
		}
		if err != nil {
			return s, err
		}
		var still []int
		passes := func(id int) {
			still = append(still, id)
			if o.verbose {
				fmt.Fprintln(os.Stderr, q.Name, "lets pass", all[id].named(p))
			}
		}
		for _, id := range left {
			c := all[id]
			if c.typ != "" {
				if !t.catches(id, o.timeout) {
					passes(id)
				}
				continue
			}
			alone, err := c.overlay(dir)
			if err != nil {
				return s, err
			}
			switch compileAndTest(q.ImportPath, alone, o.timeout) {
			case broken:
				s.tried--
			case passed:
				passes(id)
			}
		}
		left = still
	}
	for _, id := range left {
		fmt.Fprintln(w, "survives", all[id].named(p))
	}
	s.caught = s.tried - len(left)
	return s, nil
}

// overlay writes the file that has c alone and what names it to the go command.
func (c change) overlay(dir string) (string, error) {
	src, err := os.ReadFile(c.file)
	if err != nil {
		return "", err
	}
	changed := slices.Concat(src[:c.offset], []byte(c.new), src[c.offset+len(c.old):])
	file, names := filepath.Join(dir, "changed.go"), filepath.Join(dir, "changed.json")
	return names, errors.Join(os.WriteFile(file, changed, 0o600), writeOverlay(names, map[string]string{c.file: file}))
}

// named returns c as it is printed, with the file of its package.
func (c change) named(p pkg) string {
	c.file = p.ImportPath + "/" + filepath.Base(c.file)
	return c.String()
}

// table writes what was tried and caught in each package and in all.
func table(scores []score, w io.Writer) error {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "package\ttried\tcaught\t%\t")
	sum := score{path: "all"}
	row := func(s score) {
		fmt.Fprintf(t, "%s\t%d\t%d\t%.1f\t\n", s.path, s.tried, s.caught, 100*float64(s.caught)/float64(max(s.tried, 1)))
	}
	for _, s := range scores {
		row(s)
		sum.tried, sum.caught = sum.tried+s.tried, sum.caught+s.caught
	}
	if len(scores) > 1 {
		row(sum)
	}
	return t.Flush()
}
