package card

import (
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
)

// euPanel draws the table of Regulation (EU) No 1169/2011, Annex XV, with
// numbers aligned at the decimal typeset.Point (Article 34(2)). At 8 pt the letter x is
// 1.49 mm high, over the 1.2 mm of Article 13(2).
func euPanel(l *label.Label, w float64) *draw.List {
	const size, pitch = 8.0, 4.5
	st := facts(draw.Sans, size)
	p := &draw.List{W: w}
	x0, x1 := 1.8, w-1.8
	p.H = 5.6
	typeset.Write(p, x0, p.H, facts(draw.SansBold, 11), "Nutrition declaration")
	p.H += 1.9
	typeset.Fill(p, x0, p.H, x1-x0, 0.5, black)
	second := len(l.Second) == len(l.Lines)
	points := [2]float64{x0 + 0.62*(x1-x0), x0 + 0.62*(x1-x0)} // of the decimal points
	if second {
		points = [2]float64{x0 + 0.515*(x1-x0), x0 + 0.745*(x1-x0)}
	}
	head := facts(draw.SansBold, 7)
	p.H += 3.6
	typeset.WriteCentre(p, points[0]+1, p.H, head, "per 100 g")
	if second {
		typeset.WriteCentre(p, points[1]+1, p.H, head, "per portion")
		typeset.WriteRight(p, x1, p.H, head, "RI*")
		p.H += 3
		typeset.WriteCentre(p, points[1]+1, p.H, facts(draw.Sans, 7), "("+strings.TrimPrefix(l.ServingMeasure, "portion of ")+")")
		typeset.WriteRight(p, x1, p.H, facts(draw.Sans, 7), "portion")
	}
	p.H += 1.5
	for i, n := range l.Lines {
		if n.Key != "energy_kcal" { // the two energies are one line
			typeset.Fill(p, x0, p.H, x1-x0, 0.12, black)
		}
		base := p.H + pitch - 1.35
		if n.Key != "energy_kcal" {
			typeset.Write(p, x0+3*float64(n.Indent), base, st, n.Name)
		}
		atPoint(p, points[0], base, st, amountOf(n))
		if second {
			atPoint(p, points[1], base, st, amountOf(l.Second[i]))
			if n.Key != "energy_kj" { // one share for the energy
				typeset.WriteRight(p, x1, base, st, l.Second[i].DVText)
			}
		}
		p.H += pitch
	}
	typeset.Fill(p, x0, p.H, x1-x0, 0.35, black)
	notes := []*draw.List{typeset.Text(x1-x0, 8.8, facts(draw.Sans, 7), l.ServingsText)}
	if second {
		notes = append([]*draw.List{typeset.Text(x1-x0, 8.8, facts(draw.Sans, 7), "* "+strings.TrimPrefix(l.Footnote, "*"))}, notes...)
	}
	t := typeset.Stack(1.4, notes...)
	p.Place(t, x0, p.H+1.6, 1)
	p.H += t.H + 3.6
	typeset.Frame(p, 0, 0, w, p.H, usBox, black)
	return p
}

// atPoint writes an amount so that its decimal typeset.Point, or the end of its whole
// number, is at x.
func atPoint(p *draw.List, x, y float64, st typeset.Style, s string) {
	end := strings.IndexFunc(s, func(r rune) bool { return !(r >= '0' && r <= '9' || r == '<' || r == '\u2009') })
	if end < 0 {
		end = len(s)
	}
	typeset.WriteRight(p, x, y, st, s[:end])
	typeset.Write(p, x, y, st, s[end:])
}
