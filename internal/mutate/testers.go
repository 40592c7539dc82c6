package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A tester is one package's tests, compiled with all changes asleep.
type tester struct {
	pkg
	binary string
	tests  []testOf // quick ones first
}

// testOf is one top-level test.
type testOf struct {
	name  string
	takes time.Duration
	meets map[int]bool // numbers of changes
}

// quick is what tests that are asked first take at most, together.
const quick = 500 * time.Millisecond

// writeOverlay writes what the go command's -overlay reads.
func writeOverlay(name string, replace map[string]string) error {
	text, err := json.Marshal(map[string]any{"Replace": replace})
	return errors.Join(err, os.WriteFile(name, text, 0o600))
}

// build compiles the tests of p with an overlay, and lists them.
func build(p pkg, overlay, dir string) (*tester, error) {
	t := &tester{pkg: p, binary: filepath.Join(dir, strings.ReplaceAll(p.ImportPath, "/", "_")+".test")}
	out, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay="+overlay, "-o", t.binary, p.ImportPath).CombinedOutput()
	if err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", p.ImportPath, err, out)
	}
	names, err := t.run(time.Minute, nil, "-test.list=.")
	if err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", p.ImportPath, err, names)
	}
	for _, name := range strings.Fields(string(names)) {
		if !strings.HasPrefix(name, "Benchmark") {
			t.tests = append(t.tests, testOf{name: name})
		}
	}
	return t, nil
}

// run runs the binary where its package is.
func (t *tester) run(timeout time.Duration, env []string, args ...string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(context.Background(), timeout+5*time.Second)
	defer cancel()
	cmd := exec.CommandContext(ctx, t.binary, append(args, "-test.timeout="+timeout.String())...)
	cmd.Dir, cmd.Env = t.Dir, append(os.Environ(), env...)
	return cmd.CombinedOutput()
}

// survey runs each test alone with nothing changed: it must pass.
func (t *tester) survey(timeout time.Duration, dir string) error {
	for i := range t.tests {
		one := &t.tests[i]
		seen := filepath.Join(dir, "seen")
		start := time.Now()
		out, err := t.run(timeout, []string{"MUTATE_SEEN=" + seen}, "-test.short", "-test.run=^"+regexp.QuoteMeta(one.name)+"$")
		if err != nil {
			return fmt.Errorf("%s: %s fails as it is: %w\n%s", t.ImportPath, one.name, err, out)
		}
		one.takes, one.meets = time.Since(start), map[int]bool{}
		text, err := os.ReadFile(seen)
		if err != nil && !errors.Is(err, os.ErrNotExist) {
			return err
		}
		for _, n := range bytes.Fields(text) {
			id, err := strconv.Atoi(string(n))
			if err != nil {
				return err
			}
			one.meets[id] = true
		}
		if err := os.RemoveAll(seen); err != nil {
			return err
		}
	}
	slices.SortStableFunc(t.tests, func(a, b testOf) int { return int(a.takes - b.takes) })
	return nil
}

// catches reports whether a test that meets change id fails with it.
func (t *tester) catches(id int, timeout time.Duration) bool {
	var first, then []string
	var sum, rest time.Duration
	for _, one := range t.tests {
		switch {
		case !one.meets[id]:
		case sum+one.takes < quick:
			first, sum = append(first, one.name), sum+one.takes
		default:
			then, rest = append(then, one.name), rest+one.takes
		}
	}
	fails := func(names []string, usual time.Duration) bool {
		if len(names) == 0 {
			return false
		}
		_, err := t.run(min(timeout, 5*time.Second+10*usual), []string{"MUTATE=" + strconv.Itoa(id)},
			"-test.short", "-test.failfast", "-test.run=^("+strings.Join(names, "|")+")$")
		return err != nil
	}
	return fails(first, sum) || fails(then, rest)
}

type outcome int

const (
	passed outcome = iota
	failed
	broken // does not compile
)

// compileAndTest runs the tests of one package with an overlay.
func compileAndTest(path, overlay string, timeout time.Duration) outcome {
	ctx, cancel := context.WithTimeout(context.Background(), 4*timeout)
	defer cancel()
	out, err := exec.CommandContext(ctx, "go", "test", "-short", "-failfast", "-vet=off", "-p=1",
		"-timeout="+timeout.String(), "-overlay="+overlay, path).CombinedOutput()
	switch {
	case err == nil:
		return passed
	case bytes.Contains(out, []byte("[build failed]")) || bytes.Contains(out, []byte("[setup failed]")):
		return broken
	}
	return failed
}
