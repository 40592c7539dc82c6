package card

import (
	"strings"

	"ripplewright/internal/show/draw/typeset"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

// usTabularPanel draws the broad, low Nutrition Facts of 21 CFR
// 101.9(d)(11)(iii): the heading and the calories at the left, the nutrients in
// two columns, the vitamins under them and the footnote at the right. Sizes:
// Calories 10 pt or more, the serving size 9 pt, nutrients 8 pt, the rest 6 pt.
func usTabularPanel(l *label.Label) *draw.List {
	const note = 33.0
	head := max(46, facts(draw.Sans, usServings).Width(l.ServingsText))
	var lists [2][]label.PanelLine // fat to sodium, carbohydrate to protein
	var vitamins []label.PanelLine
	side := 0
	for _, n := range l.Lines[1:] {
		if n.Key == "total_carbohydrate" {
			side = 1
		}
		if n.Vitamin {
			vitamins = append(vitamins, n)
		} else {
			lists[side] = append(lists[side], n)
		}
	}
	rows := max(len(lists[0]), len(lists[1]))
	var all []string
	for _, n := range vitamins {
		all = append(all, n.Name+"\u00a0"+amountOf(n)+"\u00a0"+n.DVText)
	}
	line := strings.Join(all, " • ")
	if l.NotSignificant != "" {
		line = strings.TrimPrefix(line+" • "+l.NotSignificant, " • ")
	}
	// Both columns are as wide as the longest line needs, and the vitamins.
	col := max(50, (facts(draw.Sans, usNutrient).Width(line)+3)/2)
	for _, list := range lists {
		for _, n := range list {
			trial := &draw.List{}
			end := usName(trial, float64(n.Indent)*usIndent, 0, n, true)
			col = max(col, end+3+facts(draw.SansBold, usNutrient).Width(n.DVText)+2)
		}
	}
	x0 := usPad + head + 3
	xn := x0 + 2*col + 2
	p := &draw.List{W: xn + note + usPad}

	y := usPad + 0.3
	for side, list := range lists {
		left := x0 + float64(side)*col
		right := left + col - 2
		typeset.Write(p, left, y+face.CapHeight*usSmall*typeset.Point, facts(draw.SansBold, usSmall), "Amount per serving")
		typeset.WriteRight(p, right, y+face.CapHeight*usSmall*typeset.Point, facts(draw.SansBold, usSmall), "% Daily Value*")
		top := y + 2.6
		for i, n := range list {
			edge := top + float64(i)*usPitch
			from := left
			if n.Indent > 1 {
				from += 2 * usIndent
			}
			typeset.Fill(p, from, edge, right-from, usHair, black)
			base := edge + usPitch - (usPitch-face.XHeight*usNutrient*typeset.Point)/2 + 0.1
			usName(p, left+float64(n.Indent)*usIndent, base, n, true)
			typeset.WriteRight(p, right, base, facts(draw.SansBold, usNutrient), n.DVText)
		}
	}
	bottom := y + 2.6 + float64(rows)*usPitch
	typeset.Fill(p, x0, bottom, 2*col-2, usBar, black)
	vit := typeset.Text(2*col-2, usNutrient+4, facts(draw.Sans, usNutrient), line)
	p.Place(vit, x0, bottom+usBar+1.4, 1)
	p.H = bottom + usBar + 1.4 + vit.H + usPad + 0.4

	size := head / facts(draw.SansBold, 1).Width("Nutrition Facts")
	base := usPad + face.CapHeight*size*typeset.Point
	typeset.Write(p, usPad, base, facts(draw.SansBold, size), "Nutrition Facts")
	base += 1.6
	typeset.Fill(p, usPad, base, head, usHair, black)
	if l.ServingsText != "" {
		base += 4.4
		typeset.Write(p, usPad, base, facts(draw.Sans, usServings), l.ServingsText)
	}
	base += 4.4
	typeset.Write(p, usPad, base, facts(draw.SansBold, usServings), "Serving size")
	measure := facts(draw.SansBold, 9) // (d)(11)(iii)
	if facts(draw.SansBold, usServings).Width("Serving size")+measure.Width(l.ServingMeasure)+1.5 > head {
		base += 4
	}
	typeset.WriteRight(p, usPad+head, base, measure, l.ServingMeasure)
	base += 1.5
	typeset.Fill(p, usPad, base, head, usBar, black)
	base += usBar + 9.8
	typeset.Write(p, usPad, base-4, facts(draw.SansBold, usCalories), "Calories")
	typeset.Write(p, usPad, base, facts(draw.SansBold, usSmall), "per serving")
	typeset.WriteRight(p, usPad+head, base, facts(draw.SansBold, 26), amountOf(l.Lines[0]))
	p.H = max(p.H, base+usPad+0.5)

	typeset.Fill(p, xn-2, usPad, usHair, p.H-2*usPad, black)
	st := facts(draw.Sans, usSmall)
	p.Place(typeset.Text(note, usSmall+1.2, st, l.Footnote), xn, usPad+0.3, 1)
	typeset.Frame(p, 0, 0, p.W, p.H, usBox, black)
	return p
}
