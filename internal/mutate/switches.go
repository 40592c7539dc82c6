package main

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// An edit puts text where the bytes from at to end stand. Of edits at one
// place what closes comes first, the inner before the outer; span, the length
// of what is enclosed, tells which is which.
type edit struct {
	at, end, span int
	closes        bool
	text          string
}

// edits returns what makes c the one with number id at run time.
func (c change) edits(id int) []edit {
	if c.kind == "float" {
		return []edit{{at: c.offset, end: c.offset + len(c.old), text: fmt.Sprintf("mutateFloat[%s](%d, %s, %s)", c.typ, id, c.old, c.new)}}
	}
	span := c.end - c.start
	return []edit{
		{at: c.start, end: c.start, span: span, text: "(("},
		{at: c.end, end: c.end, span: span, closes: true, text: fmt.Sprintf(") != mutateIs(%d))", id)},
	}
}

// switched returns src with every edit made.
func switched(src []byte, edits []edit) []byte {
	slices.SortStableFunc(edits, func(a, b edit) int {
		rank := func(e edit) int { // at one place: closings, openings, then constants
			switch {
			case e.closes:
				return 0
			case e.at == e.end:
				return 1
			}
			return 2
		}
		if a.closes && b.closes {
			return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.span, b.span))
		}
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(rank(a), rank(b)))
	})
	var out []byte
	from := 0
	for _, e := range edits {
		out = append(append(out, src[from:e.at]...), e.text...)
		from = e.end
	}
	return append(out, src[from:]...)
}

// switches writes the files of p with all of its changes in them, each asleep
// until the environment calls its number, and returns what stands for what.
func switches(p pkg, all []change, dir string) (map[string]string, error) {
	edits := map[string][]edit{}
	for id, c := range all {
		if c.typ != "" {
			edits[c.file] = append(edits[c.file], c.edits(id)...)
		}
	}
	replace := map[string]string{}
	for file, e := range edits {
		src, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		to := filepath.Join(dir, "switched_"+filepath.Base(file))
		if err := os.WriteFile(to, switched(src, e), 0o600); err != nil {
			return nil, err
		}
		replace[file] = to
	}
	to := filepath.Join(dir, "switch.go")
	replace[filepath.Join(p.Dir, "mutate_switch.go")] = to
	text := strings.NewReplacer("PACKAGE", p.Name, "COUNT", fmt.Sprint(len(all))).Replace(switchSource)
	return replace, os.WriteFile(to, []byte(text), 0o600)
}

// switchSource joins the package that is changed. MUTATE is the number of the
// change that is awake; MUTATE_SEEN names a file to which the number of each
// one that is met is written, once.
const switchSource = `package PACKAGE

import (
	"os"
	"strconv"
	"sync/atomic"
)

var (
	mutateOn, mutateErr = strconv.Atoi(os.Getenv("MUTATE"))
	mutateFile          = mutateOpen()
	mutateSeen          [COUNT + 1]atomic.Bool
)

func mutateOpen() *os.File {
	f, err := os.OpenFile(os.Getenv("MUTATE_SEEN"), os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return nil
	}
	return f
}

func mutateIs(id int) bool {
	if mutateFile != nil && !mutateSeen[id].Swap(true) {
		mutateFile.WriteString(strconv.Itoa(id) + "\n")
	}
	return id == mutateOn && mutateErr == nil
}

func mutateFloat[T ~float32 | ~float64](id int, old, new T) T {
	if mutateIs(id) {
		return new
	}
	return old
}
`
