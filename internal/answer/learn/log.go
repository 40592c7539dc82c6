package learn

import (
	"context"
	"fmt"
	"math"
	"time"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// How the notebook writes days and times.
const dayForm, minuteForm = "2006-01-02", "2006-01-02 15:04"

// Logged is a batch that is ready to be written down.
type Logged struct {
	Entry batch.Batch // for batch.Append
	Whole batch.Batch // with what was written of it before
	// OtherDesign: it was made from another version of the design, whose forecast
	// nobody can make any more; it keeps the one that it has.
	OtherDesign bool
}

// Log completes what a maker has noted of a batch of d in kitchen k, where n is what the
// notebook holds: a name, the day, the version, how long it was stored and, from models
// and kitchen as published, what was expected. Without a name it is a new batch. It runs
// the cold, some tenths of a second. Errors are those of Expect.
func Log(ctx context.Context, m *model.Model, d design.Design, k cold.Profile, n *batch.Notebook, b batch.Batch, now time.Time) (Logged, error) {
	b.When = now.Format(minuteForm)
	if b.ID == "" {
		b.ID = newName(n, now)
	}
	was, known := n.Find(b.ID)
	version := batch.VersionOf(&d)
	if !known && b.Made == "" {
		b.Made = now.Format(dayForm)
	}
	out := Logged{OtherDesign: known && was.Version != "" && was.Version != version}
	if !out.OtherDesign {
		b.Version = version
	}
	whole := was.With(&b)
	if a := &whole.Ate; !a.AfterDays.Known && (a.Hardness != "" || a.Icy != "") {
		if days, ok := daysSince(whole.Made, now); ok {
			b.Ate.AfterDays, a.AfterDays = batch.Of(days), batch.Of(days)
		}
	}
	if !out.OtherDesign {
		f, err := Expect(ctx, m, d, k, &whole)
		if err != nil {
			return Logged{}, err
		}
		b.Forecast, whole.Forecast = f, f
	}
	out.Entry, out.Whole = b, whole
	return out, nil
}

// newName is the day, with a number from the second batch of a day on.
func newName(n *batch.Notebook, now time.Time) string {
	name := now.Format(dayForm)
	for i := 2; ; i++ {
		if _, taken := n.Find(name); !taken {
			return name
		}
		name = fmt.Sprintf("%s-%d", now.Format(dayForm), i)
	}
}

// daysSince returns the whole days from a day to now, as far as the notebook takes
// them.
func daysSince(made string, now time.Time) (days float64, ok bool) {
	day, err := time.Parse(dayForm, made)
	if err != nil {
		return 0, false
	}
	today, _ := time.Parse(dayForm, now.Format(dayForm))
	days = math.Round(today.Sub(day).Hours() / 24)
	entry, _ := batch.EntryAt("ate.after_days")
	return days, days >= entry.Min && days <= entry.Max
}

// Switch returns the entry that says which factors are not learnt from now on;
// batch.Nothing alone learns all again.
func Switch(off []string, now time.Time) batch.Batch {
	return batch.Batch{ID: "learning", When: now.Format(minuteForm), Off: off}
}
