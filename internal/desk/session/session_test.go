package session

import (
	"math/rand"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// newSession returns a session with the stall's plain design, with a clock to turn.
func newSession(t *testing.T) (*Session, *time.Time) {
	s := New(model.New(market.Library(t)), market.Plain())
	at := time.Date(2026, 7, 4, 9, 0, 0, 0, time.UTC)
	s.SetClock(func() time.Time { return at })
	return s, &at
}

func withServing(d design.Design, c float64) design.Design {
	d.Serving.TemperatureC = c
	return d
}

func TestADragIsOneStep(t *testing.T) {
	s, at := newSession(t)
	before := s.Design()
	for c := -13.0; c > -18; c -= 0.5 {
		*at = at.Add(16 * time.Millisecond)
		s.Preview(withServing(s.Design(), c))
	}
	s.Commit(withServing(s.Design(), -18), "serving temperature")
	require.Equal(t, "serving temperature", s.UndoName())
	require.True(t, s.Undo())
	require.True(t, s.Design().Equal(before))
	require.False(t, s.Undo())
	require.True(t, s.Redo())
	require.Equal(t, -18.0, s.Design().Serving.TemperatureC)
}

func TestKeysInARowAreOneStepAndAPauseBeginsAnother(t *testing.T) {
	s, at := newSession(t)
	press := func() {
		*at = at.Add(100 * time.Millisecond)
		s.CommitKeys(withServing(s.Design(), s.Design().Serving.TemperatureC-0.5), "serving temperature", "rail")
	}
	for range 5 {
		press()
	}
	*at = at.Add(2 * time.Second)
	s.CommitKeys(withServing(s.Design(), -20), "serving temperature", "rail")
	require.True(t, s.Undo())
	require.Equal(t, -15.5, s.Design().Serving.TemperatureC)
	press()
	require.Equal(t, -16.0, s.Design().Serving.TemperatureC)
	require.True(t, s.Undo())
	require.Equal(t, -15.5, s.Design().Serving.TemperatureC, "a key after an undo is a step of its own")
	require.True(t, s.Undo())
	require.Equal(t, -13.0, s.Design().Serving.TemperatureC)
	require.False(t, s.Undo())
}

func TestOnlyKeysOfOneWidgetMerge(t *testing.T) {
	grams := func(s *Session, i int, g float64) design.Design { return s.Design().WithGrams(design.DensePart, i, g) }
	for name, second := range map[string]func(*Session){
		"another widget": func(s *Session) { s.CommitKeys(grams(s, 1, 90), "amount", "line 1") },
		"the mouse":      func(s *Session) { s.Commit(grams(s, 0, 490), "amount") },
		"after a save": func(s *Session) {
			require.NoError(t, s.Save(filepath.Join(t.TempDir(), "quay.yaml"), false))
			s.CommitKeys(grams(s, 0, 490), "amount", "line 0")
		},
	} {
		t.Run(name, func(t *testing.T) {
			s, _ := newSession(t)
			s.CommitKeys(grams(s, 0, 501), "amount", "line 0")
			second(s)
			require.True(t, s.Undo())
			require.Equal(t, 501.0, s.Design().Dense.Lines[0].Grams)
			require.True(t, s.Undo())
			require.Equal(t, 420.0, s.Design().Dense.Lines[0].Grams)
		})
	}
}

func TestKeysThatGoThereAndBackAreNoStep(t *testing.T) {
	s, _ := newSession(t)
	s.CommitKeys(withServing(s.Design(), -12), "serving temperature", "rail")
	s.CommitKeys(withServing(s.Design(), -13), "serving temperature", "rail")
	require.Empty(t, s.UndoName())
	require.False(t, s.Dirty())
}

func TestUndoWhileAHandMovesSomethingTakesThatBack(t *testing.T) {
	s, _ := newSession(t)
	s.Commit(withServing(s.Design(), -15), "serving temperature")
	s.Preview(withServing(s.Design(), -18))
	require.False(t, s.Redo())
	require.True(t, s.Undo())
	require.Equal(t, -15.0, s.Design().Serving.TemperatureC)
	require.Equal(t, "serving temperature", s.UndoName())
}

// TestSessionIsAListOfValues holds random hands to the plainest model of undo:
// a list of values with a finger on one of them.
func TestSessionIsAListOfValues(t *testing.T) {
	for seed := int64(1); seed <= 300; seed++ {
		rnd := rand.New(rand.NewSource(seed))
		s, at := newSession(t)
		values, finger := []float64{-13}, 0
		merging, since, held := "", *at, -13.0
		moving := false
		for i := 0; i < 60; i++ {
			*at = at.Add(time.Duration(rnd.Intn(900)) * time.Millisecond)
			v := -4 - float64(rnd.Intn(6))
			push := func(widget string) {
				moving = false
				if v == values[finger] {
					return
				}
				goesOn := widget != "" && widget == merging && at.Sub(since) < merge
				merging, since = widget, *at
				values = values[:finger+1]
				switch {
				case goesOn && finger > 0 && values[finger-1] == v:
					values, finger, merging = values[:finger], finger-1, ""
				case goesOn:
					values[finger] = v
				default:
					values, finger = append(values, v), finger+1
				}
			}
			d := withServing(s.Design(), v)
			switch op := rnd.Intn(7); op {
			case 0:
				s.Preview(d)
				moving, held = v != values[finger], v
			case 1:
				s.Commit(d, "drag")
				push("")
			case 2, 3:
				widget := string(rune('a' + op))
				s.CommitKeys(d, "key", widget)
				push(widget)
			case 4, 5:
				can := moving || finger > 0
				require.Equal(t, can, s.Undo(), "seed %d, step %d", seed, i)
				if can {
					merging = ""
				}
				if !moving && finger > 0 {
					finger--
				}
				moving = false
			default:
				can := !moving && finger < len(values)-1
				require.Equal(t, can, s.Redo(), "seed %d, step %d", seed, i)
				if can {
					finger, merging = finger+1, ""
				}
			}
			want := values[finger]
			if moving {
				want = held
			}
			require.Equal(t, want, s.Design().Serving.TemperatureC, "seed %d, step %d", seed, i)
			require.Equal(t, finger > 0, s.UndoName() != "", "seed %d, step %d", seed, i)
			require.Equal(t, finger < len(values)-1, s.RedoName() != "", "seed %d, step %d", seed, i)
			require.Equal(t, want != -13, s.Dirty())
		}
	}
}

func TestAChangeOnDiskIsNewsOnce(t *testing.T) {
	s, _ := newSession(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.False(t, s.NewsOnDisk())
	require.NoError(t, s.Save(path, false))
	require.False(t, s.NewsOnDisk())
	for _, more := range []string{"# one\n", "# another\n"} {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(path, append(data, more...), 0o644))
		require.True(t, s.NewsOnDisk())
		require.False(t, s.NewsOnDisk())
	}
	require.NoError(t, s.Open(path))
	require.False(t, s.NewsOnDisk())
}

func TestAnErrorKeepsTheLastGoodResult(t *testing.T) {
	s, _ := newSession(t)
	good, err := s.Result()
	require.NoError(t, err)
	mass := good.Blend.MassG
	s.Preview(s.Design().WithGrams(design.DensePart, 0, -1))
	r, err := s.Result()
	require.ErrorContains(t, err, "dense.lines[0].grams")
	require.Equal(t, mass, r.Blend.MassG)
}

func TestSaveAndOpenGiveTheSameDesign(t *testing.T) {
	s, _ := newSession(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	s.Commit(withServing(s.Design(), -15), "serving temperature")
	require.True(t, s.Dirty())
	require.NoError(t, s.Save(path, false))
	require.False(t, s.Dirty())
	want := s.Design()
	s.Start(design.New())
	require.Empty(t, s.Path())
	require.NoError(t, s.Open(path))
	require.True(t, s.Design().Equal(want))
	require.Equal(t, path, s.Path())
}

func TestAFileChangedOnDiskIsNotOverwrittenUnasked(t *testing.T) {
	s, _ := newSession(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, s.Save(path, false))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	theirs := append(data, "# by another hand\n"...)
	require.NoError(t, os.WriteFile(path, theirs, 0o644))
	require.True(t, s.ChangedOnDisk())
	s.Commit(withServing(s.Design(), -16), "serving temperature")
	var changed *designfile.ChangedOnDiskError
	require.ErrorAs(t, s.Save("", false), &changed)
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, theirs, now)
	require.NoError(t, s.Save("", true))
	require.False(t, s.Dirty())
}

func TestAFileAtFaultLeavesTheOpenDesignAlone(t *testing.T) {
	s, _ := newSession(t)
	before := s.Design()
	path := filepath.Join(t.TempDir(), "bad.yaml")
	require.NoError(t, os.WriteFile(path, []byte("ripplewright: 1\nnmae: x\ndense: {lines: []}\nfoam: {lines: []}\n"), 0o644))
	err := s.Open(path)
	require.ErrorContains(t, err, "bad.yaml:2")
	require.True(t, s.Design().Equal(before))
}

func TestWhatIsDoneBesideTheDesignIsAStepToo(t *testing.T) {
	s, _ := newSession(t)
	freezer, can := -18.0, true
	set := func(c float64) func() bool {
		return func() bool {
			if can {
				freezer = c
			}
			return can
		}
	}
	s.Commit(withServing(s.Design(), -15), "serving temperature")
	freezer = -20
	s.Did("kitchen", Act{set(-18), set(-20)})
	s.Commit(withServing(s.Design(), -16), "serving temperature")
	require.NoError(t, s.Save(filepath.Join(t.TempDir(), "quay.yaml"), false)) // undo survives a save

	require.True(t, s.Undo())
	require.Equal(t, "kitchen", s.UndoName())
	can = false
	require.False(t, s.Undo(), "it could not be taken back")
	require.Equal(t, "kitchen", s.UndoName(), "and may be later")
	can = true
	require.True(t, s.Undo())
	require.Equal(t, -18.0, freezer)
	require.Equal(t, -15.0, s.Design().Serving.TemperatureC)
	require.Equal(t, "kitchen", s.RedoName())
	before, after := s.RedoChange()
	require.True(t, before.Equal(after), "the design stays")
	require.True(t, s.Undo())
	require.Equal(t, -13.0, s.Design().Serving.TemperatureC)
	require.True(t, s.Redo())
	require.True(t, s.Redo())
	require.Equal(t, -20.0, freezer)
	before, after = s.RedoChange()
	require.Equal(t, []float64{-15, -16}, []float64{before.Serving.TemperatureC, after.Serving.TemperatureC})
	require.True(t, s.Redo())
	before, after = s.UndoChange()
	require.Equal(t, []float64{-15, -16}, []float64{before.Serving.TemperatureC, after.Serving.TemperatureC})
	require.False(t, s.Dirty())
}
