package card

import (
	"math"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
)

// serveMinute is when the card's day serves: at 15:00, on a day long after the
// first.
const serveMinute = 10*24*60 + 15*60

// lay lays the steps out over a day or two; none where no day was found.
func (c *content) lay(p *process.Process) {
	if len(p.Steps) == 0 {
		return
	}
	o := plan.For(p)
	o.ServeMinutes = serveMinute
	day, err := plan.Lay(p.Steps, o)
	if err != nil {
		return
	}
	c.day = say.DayList(&day, serveMinute)
	c.spanMinutes, c.byHands = day.Span().ToMinutes-day.Span().FromMinutes, day.HandsOnMinutes()
}

// dayBox sets the day as a table, in as many columns as fit side by side.
func dayBox(c content, w float64) *draw.List {
	if len(c.day) == 0 {
		return nil
	}
	const least, pitch, time = 36.0, 3.9, 9.5
	n := max(1, int(w/least))
	column := w / float64(n)
	st, strong := typeset.Type(draw.Sans, 8, ink), typeset.Type(draw.SansBold, 8, ink)
	var rows []*draw.List
	for _, d := range c.day {
		if d.Day != "" {
			row := &draw.List{W: column, H: pitch}
			typeset.Write(row, 0, pitch-1.1, typeset.Type(draw.SansBold, 8, muted), d.Day)
			rows = append(rows, row)
		}
		row := &draw.List{W: column, H: pitch}
		typeset.Write(row, 0, pitch-1.1, strong, d.Time)
		typeset.Write(row, time, pitch-1.1, st, shortened(st, d.Title, column-time-2))
		rows = append(rows, row)
	}
	each := int(math.Ceil(float64(len(rows)) / float64(n)))
	all := &draw.List{W: w, H: float64(each) * pitch}
	for i, row := range rows {
		all.Place(row, float64(i/each)*column, float64(i%each)*pitch, 1)
	}
	return headed(say.DayTitle(serveMinute), w, all)
}
