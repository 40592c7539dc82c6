package report

import (
	"fmt"
	"io"
	"time"

	ics "github.com/arran4/golang-ical"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/show/say"
)

// Day is a plan of the making on real clocks.
type Day struct {
	File    string    `json:"file"`
	Name    string    `json:"name"`
	Begins  time.Time `json:"begins"`
	Serves  time.Time `json:"serves"`
	HandsOn Number    `json:"hands_on_minutes"`
	Tasks   []Task    `json:"tasks"`
	Taken   []Taken   `json:"taken"` // what one task at a time can have
	Moved   []GaveWay `json:"moved"`

	plan  plan.Plan
	reads say.Style
}

// Task is a step at its time.
type Task struct {
	Code    string    `json:"code"`
	Title   string    `json:"title"`
	Text    string    `json:"text"`
	Begins  time.Time `json:"begins"`
	Ends    time.Time `json:"ends"`
	HandsOn []Stretch `json:"hands_on"`
	Uses    []string  `json:"uses"`
}

// Stretch is a time from and to.
type Stretch struct {
	From time.Time `json:"from"`
	To   time.Time `json:"to"`
}

// Taken is a thing and the task that has it, washing-up included.
type Taken struct {
	What string `json:"what"`
	Code string `json:"code"`
	Stretch
}

// GaveWay is a task that lies earlier since another needs the same thing.
type GaveWay struct {
	Code    string `json:"code"`
	What    string `json:"what"`
	For     string `json:"for"`
	Minutes Number `json:"minutes"`
}

// DayOf returns the plan p of the making m, whose zero is at midnight, in the units of
// reads.
func DayOf(reads say.Style, file string, m say.Making, p plan.Plan, midnight time.Time) Day {
	at := func(minutes float64) time.Time {
		return midnight.Add(time.Duration(minutes * float64(time.Minute))).Round(time.Minute)
	}
	stretch := func(s plan.Span) Stretch { return Stretch{at(s.FromMinutes), at(s.ToMinutes)} }
	span := p.Span()
	d := Day{File: file, Name: m.Design.Name, Begins: at(span.FromMinutes), Serves: at(span.ToMinutes), HandsOn: Number(p.HandsOnMinutes()),
		Tasks: []Task{}, Taken: []Taken{}, Moved: []GaveWay{}, plan: p, reads: reads}
	for i := range p.Tasks {
		t := &p.Tasks[i]
		words := say.Step(reads, m, t.Step)
		out := Task{Code: string(t.Step.Code), Title: words.Title, Text: words.Text, Begins: at(t.StartMinutes), Ends: at(t.EndMinutes), HandsOn: []Stretch{}, Uses: []string{}}
		for _, h := range t.Hands {
			out.HandsOn = append(out.HandsOn, stretch(h))
		}
		for _, u := range t.Step.Uses {
			out.Uses = append(out.Uses, string(u))
		}
		d.Tasks = append(d.Tasks, out)
	}
	for _, u := range p.Uses {
		d.Taken = append(d.Taken, Taken{string(u.What), string(p.Tasks[u.Task].Step.Code), stretch(u.Span)})
	}
	for _, v := range p.Moved {
		d.Moved = append(d.Moved, GaveWay{string(v.Task), string(v.What), string(v.For), Number(v.Minutes)})
	}
	return d
}

// WriteText writes the plan as a table by the clock.
func (d Day) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s (%s)", d.Name, d.File)
	p.line("Begin %s, serve %s. %s", clock(d.Begins), clock(d.Serves), say.DayLine(d.reads, &d.plan))
	p.line("")
	for _, t := range d.Tasks {
		p.line("%s to %s  %s", clock(t.Begins), clock(t.Ends), t.Title)
	}
	if len(d.plan.Moved) > 0 {
		p.line("")
	}
	for _, v := range d.plan.Moved {
		p.line("%s", say.Moved(d.reads, v))
	}
	return p.err
}

func clock(t time.Time) string { return say.Clock(t) }

// WriteMarkdown writes the plan as a table of Markdown, words made harmless.
func (d Day) WriteMarkdown(w io.Writer) error {
	cell := func(s string) string { return say.Harmless(s, say.Markdown) }
	p := &page{w: w}
	p.line("# %s: the day", cell(d.Name))
	p.line("")
	p.line("| from | to | step | what |")
	p.line("| --- | --- | --- | --- |")
	for _, t := range d.Tasks {
		p.line("| %s | %s | %s | %s |", clock(t.Begins), clock(t.Ends), cell(t.Title), cell(t.Text))
	}
	return p.err
}

// WriteCalendar writes the plan as an iCalendar file (RFC 5545), an event a
// step; stamp is when it was written.
func (d Day) WriteCalendar(w io.Writer, stamp time.Time) error {
	c := ics.NewCalendarFor("Ripplewright")
	c.SetMethod(ics.MethodPublish)
	for i, t := range d.Tasks {
		e := c.AddEvent(fmt.Sprintf("%s-%d-%d@ripplewright", t.Code, d.Begins.Unix(), i))
		e.SetDtStampTime(stamp.UTC())
		e.SetStartAt(t.Begins.UTC())
		e.SetEndAt(t.Ends.UTC())
		e.SetSummary(say.Harmless(d.Name+": "+t.Title, say.Terminal))
		e.SetDescription(say.Harmless(t.Text, say.Terminal))
	}
	return c.SerializeTo(w, ics.WithNewLineWindows) // RFC 5545, 3.1, on every system
}
