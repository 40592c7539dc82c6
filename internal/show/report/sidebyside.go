package report

import (
	"encoding/json"
	"io"

	"ripplewright/internal/show/beside"
	"ripplewright/internal/show/say"
)

// SideBySide is designs laid side by side.
type SideBySide struct {
	Table beside.Table
	Files []string
	All   bool // with what is the same in all
}

// WriteText writes it as tables, a column for each design.
func (x SideBySide) WriteText(w io.Writer) error {
	p := &page{w: w}
	if x.Table.Same() && !x.All {
		p.line("%s", say.CompareSame.String())
		return p.err
	}
	p.line("%s", say.CompareLegend.String())
	for _, part := range x.Table.Parts(!x.All) {
		p.line("")
		p.line("%s:", part.Head)
		p.lines(x.Table.Names, beside.Laid(part.Rows))
	}
	return p.err
}

// MarshalJSON writes all of it: a value for each file, null where a design has no
// such line or figure.
func (x SideBySide) MarshalJSON() ([]byte, error) {
	rows := func(all []beside.Row) []dict {
		out := []dict{}
		for _, r := range all {
			values := make([]any, len(r.Values))
			for i, v := range r.Values {
				if values[i] = v; v != nil {
					if f, ok := v.(float64); ok {
						values[i] = Number(f)
					}
				}
			}
			o := dict{"key": r.Key, "name": r.Name, "unit": r.Unit, "values": values, "differs": r.Differs}
			if r.Bands != nil {
				bands := make([]any, len(r.Ends))
				for i, e := range r.Ends {
					bands[i] = endsJSON(r.Bands[i] != "", e[0], e[1])
				}
				o["bands"] = bands
			}
			out = append(out, o)
		}
		return out
	}
	t := x.Table
	return json.Marshal(dict{"files": x.Files, "same": t.Same(), "lines": rows(t.Lines), "settings": rows(t.Settings), "figures": rows(t.Figures)})
}
