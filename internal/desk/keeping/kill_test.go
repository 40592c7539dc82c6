//go:build unix

package keeping

import (
	"bufio"
	"flag"
	"fmt"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/work/backups"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/journal"
)

// The bar is that of
//
//	go test ./internal/desk/keeping -run Killed -kills 300 -v
var (
	kills    = flag.Int("kills", 12, "how often TestAKilledWindow kills one; the bar is 300")
	killSeed = flag.Int64("killseed", 1, "at which moments")
)

// worker is set for the process that is killed: the folder it works in.
const worker = "RIPPLEWRIGHT_TEST_WORKER"

func TestMain(m *testing.M) {
	if dir := os.Getenv(worker); dir != "" {
		work(dir)
		return
	}
	os.Exit(m.Run())
}

// numbered is a design that says its number in three places, so that half of one
// design and half of another would show.
func numbered(n int) design.Design {
	d := market.Plain()
	d.Name = fmt.Sprint("work ", n)
	d.Foam.OverrunPercent = 200 + float64(n%500)
	d.Notes = fmt.Sprint("note ", n)
	return d
}

// number is that of a design, −1 for one that is none.
func number(d design.Design) int {
	var n int
	if _, err := fmt.Sscanf(d.Name, "work %d", &n); err != nil || !d.Equal(numbered(n)) {
		return -1
	}
	return n
}

// work changes, keeps and saves a design as fast as the disk allows, or changes it and
// has it kept with the program's own pause, and says each number before the design has it.
func work(dir string) {
	fast := os.Getenv(worker+"_FAST") != ""
	if fast {
		pause = 3 * time.Millisecond
	}
	n, _ := strconv.Atoi(os.Getenv(worker + "_FROM"))
	s := session.New(model.New(market.Shelf()), numbered(n))
	s.BackUp(backups.At(filepath.Join(dir, "backups")))
	path := filepath.Join(dir, "designs", "quay.yaml")
	if _, err := os.Stat(path); err == nil {
		if err := s.Open(path); err != nil {
			panic(err)
		}
	}
	k := Open(journal.At(filepath.Join(dir, "journal")), func(error) {}, func() {}, func() {}, func() {})
	saves := rand.New(rand.NewSource(int64(n)))
	for {
		n++
		fmt.Println(n)
		s.Commit(numbered(n), "work")
		k.Look(s)
		if fast && saves.Intn(40) == 0 {
			if err := s.Save(path, true); err != nil {
				panic(err)
			}
			k.Look(s)
			k.Settle()
		}
		time.Sleep(time.Millisecond)
	}
}

// killed runs a worker from a number on, kills it after a while, and returns the
// numbers that it said and when.
func killed(t *testing.T, dir string, from int, fast bool, after time.Duration) (said map[int]time.Time, last int) {
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), worker+"="+dir, worker+"_FROM="+strconv.Itoa(from))
	if fast {
		c.Env = append(c.Env, worker+"_FAST=1")
	}
	out, err := c.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, c.Start())
	said = map[int]time.Time{}
	lines := bufio.NewScanner(out)
	first := true
	for lines.Scan() {
		n, err := strconv.Atoi(lines.Text())
		require.NoError(t, err)
		said[n], last = time.Now(), n
		if first {
			first = false
			time.AfterFunc(after, func() { _ = c.Process.Kill() })
		}
	}
	require.Error(t, c.Wait(), "it ends only by being killed")
	require.False(t, first, "it was at work")
	return said, last
}

func TestAKilledWindowLosesSecondsAndLeavesNothingHalf(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "designs"), 0o755))
	path := filepath.Join(dir, "designs", "quay.yaml")
	lib := market.Shelf()
	f := journal.At(filepath.Join(dir, "journal"))
	rnd := rand.New(rand.NewSource(*killSeed))
	have := 0
	var worst time.Duration
	for i := range *kills {
		fast, after := i%10 != 9, time.Duration(rnd.Intn(300))*time.Millisecond
		if !fast {
			after = 2*time.Second + time.Duration(rnd.Intn(3000))*time.Millisecond
		}
		said, last := killed(t, dir, have, fast, after)
		end := said[last]

		got := 0
		if _, err := os.Stat(path); err == nil {
			file, err := designfile.LoadWith(path, lib)
			require.NoError(t, err, "kill %d", i)
			got = number(file.Design)
			require.GreaterOrEqual(t, got, 0, "kill %d: half a design", i)
		}
		left := Waiting(f, lib)
		for _, o := range left {
			n := number(o.Work)
			require.GreaterOrEqual(t, n, 0, "kill %d: half a page", i)
			got = max(got, n)
			require.NoError(t, f.Forget(o.Left))
		}
		if at, ok := said[got+1]; ok {
			worst = max(worst, end.Sub(at))
		}
		have = max(have, last)
	}
	t.Logf("%d kills, at most %.2f s of work lost", *kills, worst.Seconds())
	assert.Less(t, worst, 5*time.Second)

	time.Sleep(1100 * time.Millisecond) // the next start
	assert.Empty(t, Waiting(f, lib))
	s := session.New(model.New(lib), market.Plain())
	s.BackUp(backups.At(filepath.Join(dir, "backups")))
	require.NoError(t, s.Open(path))
	assert.LessOrEqual(t, len(s.EarlierSaves()), backups.Most)
	var files []string
	require.NoError(t, filepath.WalkDir(dir, func(p string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() && filepath.Dir(filepath.Dir(p)) != filepath.Join(dir, "backups") {
			files = append(files, p)
		}
		return err
	}))
	assert.Equal(t, []string{path}, files, "nothing is left lying about")
	kept, err := filepath.Glob(filepath.Join(dir, "backups", "*", "*"))
	require.NoError(t, err)
	hidden, err := filepath.Glob(filepath.Join(dir, "backups", "*", ".*"))
	require.NoError(t, err)
	assert.LessOrEqual(t, len(kept), backups.Most)
	assert.Empty(t, hidden)
}
