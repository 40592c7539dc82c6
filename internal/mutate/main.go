package main

import (
	"bytes"
	"context"
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
	"time"
)

func main() {
	var o options
	run := flag.String("run", "model,validate,cold,say,card", "tests that follow the package's own, by the last part of their path")
	kind := flag.String("kinds", "float,compare", "what to change: "+strings.Join(kinds, ", "))
	flag.IntVar(&o.sample, "sample", 0, "how many changes to try in each package; 0 is all")
	flag.Int64Var(&o.seed, "seed", 1, "which sample")
	flag.BoolVar(&o.list, "list", false, "name the changes and run nothing")
	flag.DurationVar(&o.timeout, "timeout", time.Minute, "a test that takes longer has noticed")
	flag.Parse()
	o.run, o.kinds = strings.Split(*run, ","), strings.Split(*kind, ",")
	if err := mutate(o, flag.Args(), os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

type options struct {
	sample     int
	seed       int64
	list       bool
	run, kinds []string
	timeout    time.Duration
}

// pkg is what go list says of one package.
type pkg struct {
	ImportPath, Dir, Export       string
	GoFiles, Deps                 []string
	TestImports, XTestImports     []string
	TestGoFiles, XTestGoFiles     []string
	Standard, DepOnly, Incomplete bool
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

func mutate(o options, patterns []string, w io.Writer) error {
	if len(patterns) == 0 {
		return errors.New("name a package, as ./internal/matter/solution")
	}
	targets, err := list(append([]string{"-export", "-deps"}, patterns...)...)
	if err != nil {
		return err
	}
	ours, err := list("./internal/...")
	if err != nil {
		return err
	}
	exports := map[string]string{}
	for _, p := range targets {
		exports[p.ImportPath] = p.Export
	}
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
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
		if err := try(o, p, all, testers(p, ours, o.run), dir, w); err != nil {
			return err
		}
	}
	return nil
}

// testers returns the packages whose tests are asked, in order: p's own, then
// those of names that rest on p.
func testers(p pkg, ours []pkg, names []string) (paths []string) {
	if p.tested() {
		paths = append(paths, p.ImportPath)
	}
	for _, name := range names {
		for _, q := range ours {
			if filepath.Base(q.ImportPath) == name && q.ImportPath != p.ImportPath && q.tested() && q.restsOn(p.ImportPath) {
				paths = append(paths, q.ImportPath)
			}
		}
	}
	return paths
}

// try makes each change, asks the testers and writes the survivors and the
// share caught.
func try(o options, p pkg, all []change, testers []string, dir string, w io.Writer) error {
	if !o.list {
		for _, path := range testers {
			if out, outcome := test(path, "", o.timeout*5); outcome != passed {
				return fmt.Errorf("%s fails as it is\n%s", path, out)
			}
		}
	}
	caught, tried := 0, 0
	for _, c := range all {
		if rel, err := filepath.Rel(p.Dir, c.file); err == nil {
			c := c
			c.file = p.ImportPath + "/" + rel
			if o.list {
				fmt.Fprintln(w, c)
				continue
			}
		}
		overlay, err := overlay(c, dir)
		if err != nil {
			return err
		}
		outcome := passed
		for _, path := range testers {
			if _, outcome = test(path, overlay, o.timeout); outcome != passed {
				break
			}
		}
		switch outcome {
		case broken:
			continue
		case passed:
			fmt.Fprintln(w, "survives", c)
		case failed:
			caught++
		}
		tried++
	}
	if tried > 0 {
		fmt.Fprintf(w, "%s: %d of %d caught, %.0f %%\n", p.ImportPath, caught, tried, 100*float64(caught)/float64(tried))
	}
	return nil
}

// overlay writes the changed file and what names it to the go command.
func overlay(c change, dir string) (string, error) {
	src, err := os.ReadFile(c.file)
	if err != nil {
		return "", err
	}
	changed := slices.Concat(src[:c.offset], []byte(c.new), src[c.offset+len(c.old):])
	file, names := filepath.Join(dir, "changed.go"), filepath.Join(dir, "overlay.json")
	text, err := json.Marshal(map[string]any{"Replace": map[string]string{c.file: file}})
	if err != nil {
		return "", err
	}
	return names, errors.Join(os.WriteFile(file, changed, 0o600), os.WriteFile(names, text, 0o600))
}

type outcome int

const (
	passed outcome = iota
	failed
	broken // does not compile
)

// test runs the tests of one package, with an overlay unless that is "".
func test(path, overlay string, timeout time.Duration) (string, outcome) {
	ctx, cancel := context.WithTimeout(context.Background(), 4*timeout)
	defer cancel()
	args := []string{"test", "-short", "-failfast", "-vet=off", "-p=1", "-timeout=" + timeout.String()}
	if overlay != "" {
		args = append(args, "-overlay="+overlay)
	}
	out, err := exec.CommandContext(ctx, "go", append(args, path)...).CombinedOutput()
	switch {
	case err == nil:
		return string(out), passed
	case bytes.Contains(out, []byte("[build failed]")) || bytes.Contains(out, []byte("[setup failed]")):
		return string(out), broken
	}
	return string(out), failed
}
