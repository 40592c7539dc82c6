package say

// Indent marks the name of a row that belongs to the one above it.
const Indent = "    "

// A TableRow is a named row of a table as it is read: its unit, "" where the cells
// have their own, and a cell for each column, in words or digits, "" for unknown.
type TableRow struct {
	Name  string
	Unit  string
	Cells []string
}

// Head is the name with the unit of all cells: "Density, g/mL".
func (r TableRow) Head() string { return WithUnit(r.Name, r.Unit) }

// WithUnit is the head of a column, or the title of an axis, with its unit if it has
// one.
func WithUnit(name, unit string) string {
	if unit == "" {
		return name
	}
	return name + ", " + unit
}
