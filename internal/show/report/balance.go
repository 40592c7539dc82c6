package report

import (
	"io"
	"strings"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
)

// Balance is what was found for a design that should be otherwise: the remedies
// of its verdict, or the answer to wishes.
type Balance struct {
	File   string
	Before *model.Result
	Found  *balance.Remedies // nil where there were wishes
	Answer *balance.Answer
}

// Proposals are the designs found, the one to take first.
func (b *Balance) Proposals() []balance.Proposal {
	if b.Answer == nil {
		return b.Found.List
	}
	if !b.Answer.Met {
		return nil
	}
	list := []balance.Proposal{b.Answer.Nearest}
	for _, a := range b.Answer.Alternatives {
		list = append(list, a.Proposal)
	}
	return list
}

// All are the proposals of every kind, to be told apart by balance.Compare.
func (b *Balance) All() []*balance.Proposal {
	if b.Found != nil {
		return b.Found.All()
	}
	return b.Answer.All()
}

// Met reports whether a design with nothing amiss was found, or was there.
func (b *Balance) Met() bool {
	if b.Answer != nil {
		return b.Answer.Met
	}
	return b.Before.Verdict.Good || len(b.Found.List) > 0
}

// Nearest is what comes closest, nil where nothing has to move or may.
func (b *Balance) Nearest() *balance.Proposal {
	if b.Answer != nil {
		return &b.Answer.Nearest
	}
	return b.Found.First()
}

// MarshalJSON returns one object with met, remedies, conflicts and nearest.
func (b Balance) MarshalJSON() ([]byte, error) {
	var o object
	o.put("file", b.File)
	o.put("met", b.Met())
	remedies := []object{}
	for _, p := range b.Proposals() {
		remedies = append(remedies, proposalObject(&p))
	}
	o.put("remedies", remedies)
	o.put("conflicts", b.conflictObjects())
	if b.Answer != nil {
		o.put("alternatives", b.alternativeObjects())
	}
	if p := b.Nearest(); p != nil {
		o.put("nearest", proposalObject(p))
	} else {
		o.put("nearest", nil)
	}
	if b.Answer != nil {
		o.put("wishes", outcomeObjects(b.Answer.Outcomes))
	}
	return o.MarshalJSON()
}

func proposalObject(p *balance.Proposal) object {
	changes := []object{}
	for i := range p.Changes {
		changes = append(changes, changeObject(&p.Changes[i]))
	}
	o := object{{"changes", changes}, {"figures", proposalFigures(p)}}
	if p.Beside != nil {
		o.put("elsewhere", besideObject(p.Beside))
	}
	return o
}

func changeObject(c *balance.Change) object {
	o := object{}
	unit := "g"
	switch {
	case c.Ingredient == nil:
		o.put("setting", c.Path)
		unit = say.SettingUnit(c.Path)
	default:
		o.put("part", c.Part.String())
		o.put("ingredient", c.Ingredient.ID)
		if c.Line >= 0 {
			o.put("index", c.Line)
		} else {
			o.put("index", nil)
		}
		if c.Pieces {
			unit = string(c.CountOf)
		}
	}
	o.put("before", Number(c.Before))
	o.put("after", Number(c.After))
	o.put("unit", unit)
	return o
}

// proposalFigures are what a proposal comes to: the verdict, the two textures,
// sweetness, energy and cost.
func proposalFigures(p *balance.Proposal) object {
	r := &p.Result
	o := object{{"good", r.Verdict.Good}, {"serving_temperature_c", Number(p.Design.Serving.TemperatureC)}}
	for _, x := range [...]struct {
		key    string
		column int
	}{{"dense", figure.Custard}, {"foam", figure.Foam}} {
		o.put(x.key, some(r, x.column, "hardness", "texture", "sweetness_sucrose_percent", "initial_freezing_point_c"))
	}
	o.put("blend", some(r, figure.Tub, "sweetness_sucrose_percent"))
	o.put("energy_kcal_per_serving", jsonOf(figure.Nutrition.Row("energy_kcal"), figure.Nutrition.Row("energy_kcal").Of(r, figure.PerServing)))
	o.put("cost", costObject(r))
	var codes []string
	for _, w := range r.Warnings {
		if w.Severity > model.Note && !w.Handled {
			codes = append(codes, w.Code)
		}
	}
	o.put("cautions", list(codes))
	return o
}

// some are a few figures of a column, by their keys.
func some(r *model.Result, column int, keys ...string) object {
	var o object
	for _, key := range keys {
		if f := figure.Phases.Row(key); f != nil && f.In(column) {
			o.put(key, jsonOf(f, f.Of(r, column)))
		}
	}
	return o
}

func outcomeObjects(of []balance.Outcome) []object {
	out := []object{}
	for i := range of {
		x := &of[i]
		out = append(out, object{{"wish", x.Wish.Of.Key}, {"from", Number(x.Wish.Low)}, {"to", Number(x.Wish.High)}, {"value", Number(x.Value)}, {"met", x.Met}})
	}
	return out
}

// alternativeObjects are designs that do as well, or in which another wish gives way.
func (b *Balance) alternativeObjects() []object {
	out := []object{}
	for i := range b.Answer.Alternatives {
		x := &b.Answer.Alternatives[i]
		out = append(out, append(proposalObject(&x.Proposal), object{{"wishes", outcomeObjects(x.Outcomes)}}...))
	}
	return out
}

func (b *Balance) conflictObjects() []object {
	out := []object{}
	if b.Answer == nil {
		for _, u := range b.Found.Unmet {
			o := object{{"wish", u.Code}}
			if u.Phase != nil {
				o = object{{"wish", u.Role.String() + " eats well"}, {"nearest", Number(u.Phase.KPa)}}
			}
			out = append(out, o)
		}
		return out
	}
	for i := range b.Answer.Conflicts {
		c := &b.Answer.Conflicts[i]
		against := []string{}
		for _, k := range c.Against {
			against = append(against, b.Answer.Outcomes[k].Wish.Of.Key)
		}
		trade := []object{}
		for k := range c.Trade {
			t := &c.Trade[k]
			o := proposalObject(&t.Proposal)
			others := object{}
			for n, k := range c.Against {
				others.put(b.Answer.Outcomes[k].Wish.Of.Key, Number(t.Against[n]))
			}
			trade = append(trade, append(object{{"value", Number(t.Value)}, {"against", others}}, o...))
		}
		out = append(out, object{{"wish", c.Wish.Of.Key}, {"nearest", Number(c.Nearest)}, {"impossible", c.Alone},
			{"against", against}, {"cautions", list(c.Cautions)}, {"sentence", say.Conflict(Reads, c, b.Answer.Outcomes)}, {"trade_off", trade}})
	}
	for _, code := range b.Answer.Cautions {
		out = append(out, object{{"wish", "no caution"}, {"cautions", []string{code}}, {"sentence", say.Capital(say.CautionName(code)) + "."}})
	}
	return out
}

// WriteText writes it as a page for a terminal.
func (b Balance) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s: %s", b.File, say.Verdict(Reads, b.Before.Verdict))
	if because := b.Before.Verdict.Because; because != nil {
		p.line("%s", say.Cause(Reads, *because))
	}
	if b.Answer != nil {
		p.line("")
		for i := range b.Answer.Outcomes {
			p.line("%s", say.Outcome(Reads, &b.Answer.Outcomes[i]))
		}
		for i := range b.Answer.Conflicts {
			p.line("%s", say.Conflict(Reads, &b.Answer.Conflicts[i], b.Answer.Outcomes))
		}
		if !b.Answer.Met {
			p.line("")
			p.line("The nearest design:")
			b.proposal(p, &b.Answer.Nearest)
			for i := range b.Answer.Alternatives {
				x := &b.Answer.Alternatives[i]
				p.line("")
				p.line("%s", say.GivesWay(Reads, b.Answer.Outcomes, x.Outcomes))
				b.proposal(p, &x.Proposal)
			}
		}
	}
	list := b.Proposals()
	for i := range list {
		p.line("")
		if i == 0 && b.Answer == nil || len(list) > 1 {
			p.line("%d. %s", i+1, say.Remedy(Reads, &list[i], nil))
		} else {
			p.line("%s", say.Remedy(Reads, &list[i], nil))
		}
		b.proposal(p, &list[i])
	}
	if b.Answer == nil && len(list) == 0 {
		if advice := say.Advice(Reads, b.Before.Verdict, b.Found, nil); advice != "" {
			p.line("%s", advice)
		} else if b.Before.Verdict.Good {
			p.line("Nothing needs to change.")
		}
	}
	return p.err
}

// proposal writes what changes, before and after, and what that costs elsewhere.
func (b *Balance) proposal(p *page, of *balance.Proposal) {
	rows := make([]string, 0, len(of.Changes))
	names, width := make([]string, len(of.Changes)), 0
	for i := range of.Changes {
		names[i] = say.ChangeName(&of.Changes[i])
		width = max(width, len([]rune(names[i])))
	}
	for i := range of.Changes {
		before, after := say.ChangeValues(Reads, &of.Changes[i])
		rows = append(rows, left("   "+names[i], width+3)+"\t"+before+"\t→ "+after)
	}
	p.table(rows)
	if elsewhere := say.Elsewhere(Reads, b.Before, of); len(elsewhere) > 0 {
		p.line("   %s", strings.Join(elsewhere, "; "))
	}
}
