package report

import (
	"encoding/json"
	"io"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/show/say"
)

// Ice is how icy a design eats in one kitchen, and what would help.
type Ice struct {
	icy.Answer
	Kitchen  string
	Remedies []icy.Remedy
}

// WriteText writes it as sentences, with the weeks as a table.
func (i Ice) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("Kitchen: %s, %s", say.KitchenName(i.Kitchen), say.IceFreezer(Reads, &i.Answer))
	p.line("")
	for _, text := range say.Ice(Reads, &i.Answer) {
		p.line("%s", text)
	}
	if c := &i.Custard; c.Frozen {
		p.line("")
		rows := []string{say.T("weeks\twall, µm\tcore, µm\tband of the coarser, µm")}
		for _, w := range c.Weeks {
			band := w.Coarser()
			rows = append(rows, Number(w.Week).text(0)+"\t"+Number(w.Wall.ValueUM).text(0)+"\t"+Number(w.Core.ValueUM).text(0)+"\t"+say.CrystalBand(Reads, band.LowUM, band.HighUM))
		}
		p.table(rows)
	}
	if len(i.Remedies) > 0 {
		p.line("")
		p.line("%s:", say.IceHelps.String())
		for k := range i.Remedies {
			p.line("    %s", say.IceRemedy(Reads, &i.Remedies[k]))
		}
	}
	return p.err
}

// MarshalJSON writes the answer. A size that is not there is null; low_um and
// high_um are the band of the coarser place after all weeks, of which word is.
func (i Ice) MarshalJSON() ([]byte, error) {
	a := &i.Answer
	steps := make([]dict, len(a.Steps))
	for k, s := range a.Steps {
		steps[k] = dict{"step": string(s.Step), "share": Number(s.Fraction)}
	}
	remedies := make([]dict, len(i.Remedies))
	for k := range i.Remedies {
		r := &i.Remedies[k]
		remedies[k] = dict{
			"change": string(r.Change), "from": Number(r.From), "to": Number(r.To), "hardened_um": Number(r.Hardened.ValueUM), "after_um": Number(r.After.ValueUM),
			"finer_um": Number(r.FinerUM), "word": r.Word.Name(), "sentence": say.IceRemedy(Reads, r),
		}
	}
	b := &a.PutBack
	return json.Marshal(dict{
		"profile": i.Kitchen, "air_c": Number(a.AtC), "swing_k": Number(a.SwingK), "openings_per_day": Number(a.Openings), "beating": string(a.Beating), "churned": a.Churned,
		"custard": iceJSON(&a.Custard), "foam": iceJSON(&a.Foam), "by_step": steps, "remedies": remedies,
		"stays":    dict{"word": a.Keeps.Word.Name(), "up_to_um": Number(a.Keeps.UpToUM), "weeks": Number(a.Keeps.Weeks), "weeks_low": Number(a.Keeps.LowWeeks), "weeks_high": Number(a.Keeps.HighWeeks)},
		"put_back": dict{"minutes": Number(b.Minutes), "ring_c": Number(b.RingC), "core_c": Number(b.CoreC), "wall_um": Number(b.Ring.ValueUM), "core_um": Number(b.Core.ValueUM), "icy_rim": b.Rim},
		"learnt":   iceLearnt(a), "gums": a.Gums, "sentences": say.Ice(Reads, a), "line": word(say.IceLine(Reads, a)),
	})
}

// iceLearnt is what batches have taught, null for nothing.
func iceLearnt(a *icy.Answer) any {
	if a.Learnt.IceFactor == 0 {
		return nil
	}
	return dict{"batches": a.Learnt.IceBatches, "factor": Number(a.Learnt.IceFactor), "band_left": Number(a.Learnt.IceLeftFraction)}
}

// iceJSON is one phase's ice, null of one that there is not.
func iceJSON(p *icy.Phase) any {
	if !p.Present {
		return nil
	}
	if !p.Frozen {
		return dict{"has_ice": false, "after_freezing_um": nil, "hardened_wall_um": nil, "hardened_core_um": nil, "weeks": []dict{}, "word": nil, "low_um": nil, "high_um": nil}
	}
	list := make([]dict, len(p.Weeks))
	for i, w := range p.Weeks {
		list[i] = dict{"week": Number(w.Week), "wall_um": Number(w.Wall.ValueUM), "core_um": Number(w.Core.ValueUM)}
	}
	band := p.Weeks[len(p.Weeks)-1].Coarser()
	return dict{
		"has_ice": true, "after_freezing_um": Number(p.AfterFreezing.ValueUM), "hardened_wall_um": Number(p.Wall.ValueUM), "hardened_core_um": Number(p.Core.ValueUM),
		"hardened_mean_um": Number(p.Mean.ValueUM), "weeks": list, "word": p.Word.Name(), "word_hardened": p.Hardened.Name(),
		"low_um": Number(band.LowUM), "high_um": Number(band.HighUM), "little_ice": p.Little, "unbeaten": p.Unbeaten, "swing_melts": p.Melts,
	}
}
