package report

import (
	"io"
	"math"
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/say"
)

// Label is a label as plain text: with the names and claims that are met or
// nearly met, or with every one.
type Label struct {
	*label.Label
	Every bool `json:"-"`
}

// nearMiss is by what share of a bound a figure may miss it and still be nearly
// there. Own convention.
const nearMiss = 0.1

// near reports whether some condition is missed, and none by more than a little.
// What an unknown figure leaves open is not near.
func near(limits []label.Limit) bool {
	missed := false
	for _, c := range limits {
		if c.Met || c.Judge {
			continue
		}
		if c.Incomplete || c.Own == nil || c.Miss == 0 || math.Abs(c.Miss) > nearMiss*math.Abs(*c.Own) {
			return false
		}
		missed = true
	}
	return missed
}

// WriteText writes the panel, the statement, the names and the claims.
func (l Label) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s", say.PanelTitle(l.Region))
	p.said(l.ServingsText, l.ServingMeasure)
	p.panel(l)
	p.said(l.NotSignificant, l.Footnote)
	p.line("%s", say.EnergyBy(l.EnergyMethod))
	p.line("")
	p.line("%s", l.IngredientsText)
	p.said(say.Said(l.Carries))
	p.line("")
	rest := p.names(l)
	p.line("")
	rest += p.claims(l)
	if rest > 0 {
		if rest == 1 {
			p.line("1 more name or claim is not met: --all lists them.")
		} else {
			p.line("%s more names and claims are not met: --all lists them.", Reads.Number(float64(rest), 0))
		}
	}
	for _, heading := range [...]struct {
		word say.Message
		list flaw.Remarks
	}{{"Warning: %s", l.Warnings}, {"Note: %s", l.Notes}} {
		for _, s := range heading.list {
			p.line("%s", say.T(heading.word, say.Said(s)))
		}
	}
	return p.err
}

// said writes the lines in which there is something.
func (p *page) said(lines ...string) {
	for _, s := range lines {
		if s != "" {
			p.line("%s", s)
		}
	}
}

// names writes the name proposed and those tested, and returns how many were left out.
func (p *page) names(l Label) (rest int) {
	p.line("Proposed name: %s", l.ProposedName)
	for _, n := range l.Names {
		if !l.Every && !n.Met && !near(n.Limits) {
			rest++
			continue
		}
		p.line("%s (%s, %s): %s", say.Of(n.Name), strings.ToUpper(string(n.Region)), say.LabelledFood(n.Of), say.Met(n.Met))
		p.limits(n.Limits)
		if n.Note != nil {
			p.line("    %s", say.Said(n.Note))
		}
	}
	return rest
}

// claims writes the claims, and returns how many were left out.
func (p *page) claims(l Label) (rest int) {
	p.line("Claims by their published conditions:")
	for _, c := range l.Claims {
		if !l.Every && !c.Met && !near(c.Conditions) {
			rest++
			continue
		}
		if c.Incomplete {
			p.line("%s: %s; it depends on an unknown figure", c.Claim, say.Met(c.Met))
		} else {
			p.line("%s: %s", c.Claim, say.Met(c.Met))
		}
		p.limits(c.Conditions)
		if c.Disclosure != nil {
			p.line("    %s", say.T("beside it: %s", say.Said(c.Disclosure)))
		}
	}
	return rest
}

// panel writes the lines under what their columns are per.
func (p *page) panel(l Label) {
	width := 0
	for _, x := range l.Lines {
		width = max(width, 2*x.Indent+len([]rune(x.Name)))
	}
	columns, gaps := l.PanelColumns(), false
	head := left("", width)
	for _, c := range columns {
		head += "\t" + c.Per + "\t" + c.Share
	}
	rows := []string{head}
	for i, x := range l.Lines {
		row := left(strings.Repeat("  ", x.Indent)+x.Name, width)
		for _, c := range columns {
			row += "\t" + c.Lines[i].Marked(c.Lines[i].Text) + "\t" + c.ShareText(i)
		}
		rows, gaps = append(rows, row), gaps || x.Incomplete
	}
	p.table(rows)
	if gaps {
		p.line(label.IncompleteMark + " A lower bound: some ingredient leaves it unknown.")
	}
}

func (p *page) limits(limits []label.Limit) {
	for _, c := range limits {
		p.line("    %s", say.LimitLine(Reads, c))
	}
}
