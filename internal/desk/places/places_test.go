package places

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every place but that of all figures stands in one row, in the order of Next, and has a
// name of its own.
func TestEveryPlaceStandsInOneRow(t *testing.T) {
	var rows []Place
	for _, g := range Groups {
		rows = append(rows, g.Places...)
	}
	named := map[string]bool{}
	for p := Place(0); int(p) < Count; p++ {
		assert.NotEmpty(t, p.Name())
		assert.False(t, named[p.Name()], p.Name())
		named[p.Name()] = true
		if p != Figures {
			assert.Equal(t, p, rows[p])
			assert.Contains(t, Groups[p.Group()].Places, p)
		}
	}
	assert.Len(t, rows, Count-1)
	assert.Equal(t, Bench.Group(), Figures.Group())
}

func TestTheWay(t *testing.T) {
	var w Way
	assert.Equal(t, Bench, w.At())
	assert.Equal(t, Steps, w.Into(1))
	w.Go(Cold)
	assert.Equal(t, Bench, w.Into(0))
	w.Go(Bench)
	assert.Equal(t, Cold, w.Into(1), "where one was last")
	w.Go(Cold)
	assert.Equal(t, Shopping, w.Into(1), "on within the group")
	w.Go(Shopping)
	assert.Equal(t, Steps, w.Into(1), "around")
	w.Go(Figures)
	assert.Equal(t, Ask, w.Into(0), "from what opens from the bench as from the bench")
	w.Go(Sure)
	assert.Equal(t, Bench, w.Next(1))
	w.Go(Bench)
	assert.Equal(t, Sure, w.Next(-1))
}

// From anywhere a group's key, pressed again and again, comes by every place of the
// group, and the next page after the next comes by all.
func TestEveryPlaceIsReached(t *testing.T) {
	for from := Place(0); int(from) < Count; from++ {
		for g := range Groups {
			var w Way
			w.Go(from)
			seen := map[Place]bool{}
			if from.Group() == g {
				seen[from.InRow()] = true
			}
			for range Groups[g].Places {
				w.Go(w.Into(g))
				seen[w.At()] = true
			}
			assert.Len(t, seen, len(Groups[g].Places), "from %s by %s", from.Name(), Groups[g].Name)
			start := w.At()
			for i := range Count - 1 {
				w.Go(w.Next(1))
				assert.Equal(t, i == Count-2, w.At() == start)
			}
		}
	}
}
