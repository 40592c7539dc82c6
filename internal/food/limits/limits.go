// Package limits is the one table of what a cook cannot do and of what nobody
// would eat: for each figure of a design the steps at which a maker is told,
// warned or stopped, with where each number comes from and how it was read.
//
// A number that is only remembered never stops anyone.
package limits

// Level says how far a step goes.
type Level uint8

// The levels. The zero Level is within all limits.
const (
	Within Level = iota
	Note         // worth knowing
	Warn         // who makes or eats it will notice
	Stop         // it cannot work as drawn
)

// String returns the level's word.
func (l Level) String() string { return [...]string{"within", "note", "warn", "stop"}[l] }

// Read says how a number was read.
type Read byte

// The ways of reading.
const (
	InText    Read = 'V' // in the text, its abstract or a page of it
	Secondary Read = '2' // on a page that repeats it
	Computed  Read = 'C' // here, from what the source says
	Memory    Read = 'M' // from memory, or common practice without a source
)

// Step is one bound of a limit.
type Step struct {
	Level  Level
	At     float64 // in the limit's unit; the bound itself is still allowed
	Read   Read
	Row    string // of testdata/tables/kitchen_limits.csv that At is the low or high of, "" if it is not in it
	Source string
}

// Limit is the steps of one figure, the mildest first.
type Limit struct {
	Code  string // of the warning that it gives
	What  string // the figure
	Unit  string
	Below bool // a figure is at fault below the steps; false: above them
	Steps []Step
}

// Passed returns the gravest step that v passes, ok false where v is within
// all of them or is no number.
func (l *Limit) Passed(v float64) (s Step, ok bool) {
	for _, step := range l.Steps {
		if v > step.At && !l.Below || v < step.At && l.Below {
			s, ok = step, true
		}
	}
	return s, ok
}

// Level returns that of the gravest step that v passes.
func (l *Limit) Level(v float64) Level {
	s, _ := l.Passed(v)
	return s.Level
}
