package report

import (
	"io"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/show/say"
)

// Cold is the plan of the cold. Its JSON is the plan's own.
type Cold struct{ cold.Answer }

// WriteText writes the plan as sentences, with the stirs as a table.
func (c Cold) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("Kitchen: %s", say.KitchenName(c.Profile.Name))
	p.line("")
	p.line("Still-freezing: %s", say.StillFreeze(Reads, &c.StillFreeze))
	p.stirs(c.StillFreeze.Dense.Stirs)
	p.line("")
	p.line("Hardening: %s", say.Harden(Reads, &c.Harden))
	p.line("Serving, counter: %s", say.Softening(Reads, &c.Counter))
	p.line("Serving, refrigerator: %s", say.Softening(Reads, &c.Fridge))
	p.line("Storage: %s", say.Storage(Reads, &c.Storage))
	for _, s := range []string{say.StorageChange(Reads, &c.Storage), say.Ageing(Reads, &c.Storage)} {
		if s != "" {
			p.line("    %s", s)
		}
	}
	for _, n := range c.Notes {
		p.line("%s: %s [%s, %s]", say.Of(n.Severity.String()), say.Warning(Reads, n), n.Code, n.Where)
	}
	return p.err
}

func (p *page) stirs(stirs []cold.Stir) {
	if len(stirs) == 0 {
		return
	}
	rows := []string{strings.ReplaceAll(say.T("stir custard at, min\tmean, °C\tedge, °C\twater frozen, %"), "°C", Reads.Degree())}
	for _, s := range stirs {
		rows = append(rows, Number(s.AtMinutes).text(0)+"\t"+Number(Reads.Degrees(s.MeanC)).text(1)+"\t"+Number(Reads.Degrees(s.EdgeC)).text(1)+"\t"+Number(s.WaterFrozenPercent).text(0))
	}
	p.table(rows)
}
