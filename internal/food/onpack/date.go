package onpack

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"ripplewright/internal/form/flaw"
)

// Durability is for how long a tub keeps its quality, as its maker has found
// out: days or calendar months. No law gives it.
type Durability struct {
	Days, Months int // one of them, over 0; both 0: not said
}

// The longest durability that is taken for one: what is more is a slip.
const (
	mostDays   = 1100
	mostMonths = 36
)

var errDurability = flaw.New(`a durability is whole days or months, as "90d" or "6m", up to 3 years`)

// ParseDurability reads "90d" or "6m".
func ParseDurability(s string) (Durability, error) {
	s = strings.TrimSpace(s)
	number, unit := strings.TrimRight(s, "dm"), ""
	if number != s && len(s)-len(number) == 1 {
		unit = s[len(number):]
	}
	n, err := strconv.Atoi(number)
	switch {
	case err != nil || n < 1:
		return Durability{}, errDurability
	case unit == "d" && n <= mostDays:
		return Durability{Days: n}, nil
	case unit == "m" && n <= mostMonths:
		return Durability{Months: n}, nil
	}
	return Durability{}, errDurability
}

// Known reports whether the maker has said one.
func (d Durability) Known() bool { return d.Days > 0 || d.Months > 0 }

func (d Durability) String() string {
	switch {
	case d.Months > 0:
		return fmt.Sprintf("%dm", d.Months)
	case d.Days > 0:
		return fmt.Sprintf("%dd", d.Days)
	}
	return ""
}

// DateForm is how much of a date stands on a tub.
type DateForm string

// The forms.
const (
	ByDay   DateForm = "day"   // always lawful; saves the lot
	ByMonth DateForm = "month" // from over 3 months on
	ByYear  DateForm = "year"  // from over 18 months on
)

// BestBefore is a date of minimum durability by Annex X(1) of Regulation (EU)
// No 1169/2011.
type BestBefore struct {
	Last time.Time // the last good day
	// Least is how short the date may be: "day+month" up to 3 months,
	// "month+year" up to 18, else "year".
	Least string
}

// BestBeforeOf returns the date of a tub made on a day. Months go by the
// calendar; a day that a month lacks becomes its last.
func BestBeforeOf(made time.Time, d Durability) BestBefore {
	b := BestBefore{Last: made.AddDate(0, 0, d.Days), Least: "year"}
	if d.Months > 0 {
		b.Last = addMonths(made, d.Months)
	}
	switch {
	case !b.Last.After(addMonths(made, 3)):
		b.Least = "day+month"
	case !b.Last.After(addMonths(made, 18)):
		b.Least = "month+year"
	}
	return b
}

func addMonths(t time.Time, n int) time.Time {
	first := time.Date(t.Year(), t.Month(), 1, 0, 0, 0, 0, t.Location()).AddDate(0, n, 0)
	last := first.AddDate(0, 1, -1).Day()
	return first.AddDate(0, 0, min(t.Day(), last)-1)
}

// Text words the date in a form, and "" where the law does not allow that. Day
// and end are the language's words before a day, and before a month or year:
// "Best before", "Best before end"; "…" in them is where the date stands. A
// month is promised to its end, so it is the last that ends by the last good
// day.
func (b BestBefore) Text(form DateForm, day, end string) string {
	switch form {
	case ByDay:
		return placed(day, b.Last.Format("02.01.2006"))
	case ByMonth:
		if b.Least == "day+month" || end == "" {
			return ""
		}
		month := b.Last
		if month.AddDate(0, 0, 1).Month() == month.Month() {
			month = time.Date(month.Year(), month.Month(), 1, 0, 0, 0, 0, month.Location()).AddDate(0, 0, -1)
		}
		return placed(end, month.Format("01.2006"))
	case ByYear:
		if b.Least != "year" || end == "" {
			return ""
		}
		year := b.Last.Year()
		if b.Last.Month() != time.December || b.Last.Day() != 31 {
			year--
		}
		return placed(end, strconv.Itoa(year))
	}
	return ""
}

// USText words the date for the US, where its form is free: the month as a word
// cannot be taken for the day.
func (b BestBefore) USText() string {
	return "Best if used by " + b.Last.Format("Jan 2, 2006") // the phrase that FDA and USDA support, from memory
}

func placed(words, date string) string {
	if strings.Contains(words, "…") {
		return strings.Replace(words, "…", date, 1)
	}
	return words + " " + date
}

// LotOf is our lot of what was made on a day: L, the year's last two digits and
// the day of the year. One batch a day; the maker may type another.
func LotOf(made time.Time) string { return fmt.Sprintf("L%02d%03d", made.Year()%100, made.YearDay()) }
