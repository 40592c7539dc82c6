package coldview

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/show/say"
)

// TimeHeads are the heads of a table of times.
func TimeHeads() []string { return []string{say.T("about"), say.T("from"), say.T("to")} }

// times is a row of times in minutes, in one unit.
func times(s say.Style, name string, r cold.Range) say.TableRow {
	word := func(minute float64) string { return say.Reached(s, minute, r.Value, r.High) }
	return say.TableRow{Name: name, Cells: []string{word(r.Value), word(r.Low), word(r.High)}}
}

// hours is the same of a time in hours.
func hours(s say.Style, name string, r cold.Range) say.TableRow {
	return times(s, name, cold.Range{Value: 60 * r.Value, Low: 60 * r.Low, High: 60 * r.High})
}

// number is a cell, "" where v is unknown.
func number(s say.Style, v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return s.Number(v, places)
}

// degrees is a cell of a temperature, °C, in the maker's scale.
func degrees(s say.Style, c float64, places int) string { return number(s, s.Degrees(c), places) }

// FreezingRows are the times of a phase that freezes in its dish.
func FreezingRows(s say.Style, c *cold.Cooling) []say.TableRow {
	if !c.Present {
		return nil
	}
	var rows []say.TableRow
	if c.Stirred || c.FirstIceMinutes.Known() {
		rows = append(rows, times(s, say.T("First ice at the edge"), c.FirstIceMinutes))
	}
	if math.IsNaN(c.ReadyC) {
		return rows
	}
	if c.Stirred {
		rows = append(rows, times(s, say.NamedAt(s, say.T("Whip air in"), c.WhipC), c.WhipMinutes))
	}
	return append(rows, times(s, say.NamedAt(s, say.T("Swirl"), c.ReadyC), c.ReadyMinutes))
}

// mostStirs are as many as are worth listing: a custard that never gets stiff is
// stirred for days.
const mostStirs = 12

// FirstStirs are the stirs that are listed.
func FirstStirs(c *cold.Cooling) []cold.Stir { return c.Stirs[:min(len(c.Stirs), mostStirs)] }

// StirHeads are the heads of the table of stirs.
func StirHeads(s say.Style) []string {
	return []string{say.WithUnit(say.T("mean"), s.Degree()), say.WithUnit(say.T("edge"), s.Degree()), say.WithUnit(say.T("frozen"), "%")}
}

// StirRows are the first stirs.
func StirRows(s say.Style, c *cold.Cooling) []say.TableRow {
	var rows []say.TableRow
	for _, x := range FirstStirs(c) {
		rows = append(rows, say.TableRow{Name: s.Duration(x.AtMinutes), Cells: []string{degrees(s, x.MeanC, 1), degrees(s, x.EdgeC, 1), number(s, x.WaterFrozenPercent, 0)}})
	}
	return rows
}

// HardenRows are the times of a tub in the freezer.
func HardenRows(s say.Style, h *cold.Harden) []say.TableRow {
	return []say.TableRow{hours(s, say.CoreAt(s, say.T("Move"), h.MoveC), h.MoveHours), hours(s, say.CoreAt(s, say.T("Store"), h.CoreToC), h.Hours)}
}

// SofteningRows are the times of a tub that softens, made for servingC; those of
// scooping only where it does, and none that hang on a hardness nobody knows.
func SofteningRows(s say.Style, v *cold.Softening, servingC float64) []say.TableRow {
	var rows []say.TableRow
	if v.OK {
		rows = append(rows, times(s, say.T("Outer ring scoops"), v.FromMinutes), times(s, say.T("Whole tub scoops"), v.WholeMinutes),
			times(s, say.T("Coldest spot scoops"), v.CoreMinutes), times(s, say.T("Outer ring too soft"), v.ToMinutes))
	}
	if v.Why != cold.NobodyKnows {
		rows = append(rows, times(s, say.T("Melts at the wall"), v.MeltsAtWallMinutes))
	}
	if v.StartC > servingC {
		return append(rows, say.TableRow{Name: say.FreezerWarmer(s, servingC), Cells: []string{"", "", ""}})
	}
	return append(rows, times(s, say.ReachesAt(s, say.T("Ring"), servingC), v.RingServingMinutes), times(s, say.ReachesAt(s, say.T("Tub"), servingC), v.MeanServingMinutes))
}

// BandHeads are the heads of the table of what the outer ring is right for.
func BandHeads(s say.Style) []string {
	return []string{say.WithUnit(say.T("from"), s.Degree()), say.WithUnit(say.T("to"), s.Degree()), say.T("from"), say.T("to")}
}

// BandRows are what the outer ring is right for, and when. The colder end is
// unknown where the hardness law ends before it.
func BandRows(s say.Style, v *cold.Softening) []say.TableRow {
	row := func(name string, b *cold.ScoopTimes) say.TableRow {
		if !b.Present || !b.OK {
			return say.TableRow{Name: name, Cells: []string{"", "", "", ""}}
		}
		from := degrees(s, b.FromC, 1)
		if b.FromC < b.LawFromC {
			from = "" // colder than nobody knows
		}
		return say.TableRow{Name: name, Cells: []string{from, degrees(s, b.ToC, 1), say.Reached(s, b.FromMinutes.Value), say.Reached(s, b.ToMinutes.Value)}}
	}
	both := cold.ScoopTimes{Present: true, OK: v.OK, FromC: v.FromC, ToC: v.ToC, LawFromC: v.FromC, FromMinutes: v.FromMinutes, ToMinutes: v.ToMinutes}
	for _, b := range [...]*cold.ScoopTimes{&v.Dense, &v.Foam} {
		if b.Present {
			both.LawFromC = math.Max(both.LawFromC, b.LawFromC)
		}
	}
	return []say.TableRow{row(say.T("Custard"), &v.Dense), row(say.T("Ribbon¦of foam"), &v.Foam), row(say.T("Both"), &both)}
}

// InsideHeads are the heads of the table of what is inside the tub.
func InsideHeads(s say.Style) []string {
	return []string{say.WithUnit(say.T("ring"), s.Degree()), say.WithUnit(say.T("core"), s.Degree())}
}

// InsideRows are the temperatures inside the tub when something begins.
func InsideRows(s say.Style, v *cold.Softening) []say.TableRow {
	row := func(name string, r cold.Range) say.TableRow {
		if !r.Known() {
			return say.TableRow{Name: name, Cells: []string{"", ""}}
		}
		m := v.Run.At(r.Value)
		return say.TableRow{Name: name, Cells: []string{degrees(s, m.RingC, 1), degrees(s, m.CoreC, 1)}}
	}
	return []say.TableRow{row(say.T("When it begins to scoop"), v.FromMinutes), row(say.T("When the whole tub does"), v.WholeMinutes), row(say.T("When the ring is too soft"), v.ToMinutes)}
}

// StoredRows are the two phases in the freezer, custard and foam.
func StoredRows(s say.Style, st *cold.Storage) []say.TableRow {
	row := func(name, unit string, of func(*cold.Stored) string) say.TableRow {
		r := say.TableRow{Name: name, Unit: unit, Cells: []string{"", ""}}
		for i, x := range [...]*cold.Stored{&st.Dense, &st.Foam} {
			if x.Present {
				r.Cells[i] = of(x)
			}
		}
		return r
	}
	rows := []say.TableRow{
		row(say.T("Freezes at"), s.Degree(), func(x *cold.Stored) string { return degrees(s, x.FreezingPointC, 1) }),
		row(say.T("Water frozen"), "%", func(x *cold.Stored) string { return number(s, x.WaterFrozenPercent, 0) }),
		row(say.T("Ice that a swing melts"), "%", func(x *cold.Stored) string { return number(s, x.SwingPercent, 1) }),
	}
	if st.WaterDrawn {
		drawn := say.TableRow{Name: say.T("Water drawn, at most"), Unit: "g/100 g", Cells: []string{number(s, st.DrawnG, 0), ""}}
		if st.Drawer == "foam" {
			drawn.Cells = []string{"", number(s, st.DrawnG, 0)}
		}
		rows = append(rows, drawn)
	}
	if st.Dense.Present && st.Foam.Present {
		both := degrees(s, st.KeepBelowC, 0)
		rows = append(rows, say.TableRow{Name: say.T("Both hold ice below"), Unit: s.Degree(), Cells: []string{both, both}})
	}
	return rows
}

// AgeingRows are how fast ice coarsens in the freezer, at its warm end and in
// others.
func AgeingRows(s say.Style, st *cold.Storage) []say.TableRow {
	row := func(name string, c, index float64) say.TableRow {
		return say.TableRow{Name: name + " " + s.TemperatureTo(c, 1), Cells: []string{number(s, index, 1)}}
	}
	rows := []say.TableRow{row(say.T("In this freezer"), st.AtC, st.AgeingIndex)}
	if st.SwingK > 0 {
		rows = append(rows, row(say.T("At its warm end"), st.AtC+st.SwingK, st.AgeingIndexWarm))
	}
	for i, c := range cold.AgeingAtC {
		rows = append(rows, row(say.T("At"), c, st.Ageing[i]))
	}
	return rows
}

// ChangeRows are the times that a calibration moves, before and after.
func ChangeRows(s say.Style, k cold.MeasurementKind, before, after *cold.Answer) []say.TableRow {
	row := func(name string, minutes float64, of func(*cold.Answer) cold.Range) say.TableRow {
		return say.TableRow{Name: name, Cells: []string{say.TimeBand(s, of(before), minutes), say.TimeBand(s, of(after), minutes)}}
	}
	if k == cold.ScoopedWell {
		return []say.TableRow{
			row(say.T("Outer ring scoops"), 1, func(a *cold.Answer) cold.Range { return a.Counter.FromMinutes }),
			row(say.T("Whole tub scoops"), 1, func(a *cold.Answer) cold.Range { return a.Counter.WholeMinutes }),
			row(say.T("Outer ring too soft"), 1, func(a *cold.Answer) cold.Range { return a.Counter.ToMinutes }),
		}
	}
	return []say.TableRow{
		row(say.T("Custard can be swirled"), 1, func(a *cold.Answer) cold.Range { return a.StillFreeze.Dense.ReadyMinutes }),
		row(say.T("Tub can be moved"), 60, func(a *cold.Answer) cold.Range { return a.Harden.MoveHours }),
		row(say.T("Tub can be stored"), 60, func(a *cold.Answer) cold.Range { return a.Harden.Hours }),
	}
}
