package card

import (
	"strings"

	"ripplewright/internal/food/label"
)

// usTabularPanel draws the broad, low Nutrition Facts of 21 CFR
// 101.9(d)(11)(iii): the heading and the calories at the left, the nutrients in
// two columns, the vitamins under them and the footnote at the right. Sizes:
// Calories 10 pt or more, the serving size 9 pt, nutrients 8 pt, the rest 6 pt.
func usTabularPanel(l *label.Label) *sheet {
	const note = 33.0
	head := max(46, facts(sans, usServings).width(l.ServingsText))
	var lists [2][]label.Line // fat to sodium, carbohydrate to protein
	var vitamins []label.Line
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
	col := max(50, (facts(sans, usNutrient).width(line)+3)/2)
	for _, list := range lists {
		for _, n := range list {
			trial := &sheet{}
			end := usName(trial, float64(n.Indent)*usIndent, 0, n, true)
			col = max(col, end+3+facts(sansBold, usNutrient).width(n.DVText)+2)
		}
	}
	x0 := usPad + head + 3
	xn := x0 + 2*col + 2
	p := &sheet{w: xn + note + usPad}

	y := usPad + 0.3
	for side, list := range lists {
		left := x0 + float64(side)*col
		right := left + col - 2
		p.write(left, y+capHeight*usSmall*point, facts(sansBold, usSmall), "Amount per serving")
		p.writeRight(right, y+capHeight*usSmall*point, facts(sansBold, usSmall), "% Daily Value*")
		top := y + 2.6
		for i, n := range list {
			edge := top + float64(i)*usPitch
			from := left
			if n.Indent > 1 {
				from += 2 * usIndent
			}
			p.box(from, edge, right-from, usHair, black)
			base := edge + usPitch - (usPitch-xHeight*usNutrient*point)/2 + 0.1
			usName(p, left+float64(n.Indent)*usIndent, base, n, true)
			p.writeRight(right, base, facts(sansBold, usNutrient), n.DVText)
		}
	}
	bottom := y + 2.6 + float64(rows)*usPitch
	p.box(x0, bottom, 2*col-2, usBar, black)
	vit := text(2*col-2, usNutrient+4, facts(sans, usNutrient), line)
	p.place(vit, x0, bottom+usBar+1.4)
	p.h = bottom + usBar + 1.4 + vit.h + usPad + 0.4

	size := head / facts(sansBold, 1).width("Nutrition Facts")
	base := usPad + capHeight*size*point
	p.write(usPad, base, facts(sansBold, size), "Nutrition Facts")
	base += 1.6
	p.box(usPad, base, head, usHair, black)
	if l.ServingsText != "" {
		base += 4.4
		p.write(usPad, base, facts(sans, usServings), l.ServingsText)
	}
	base += 4.4
	p.write(usPad, base, facts(sansBold, usServings), "Serving size")
	measure := facts(sansBold, 9) // (d)(11)(iii)
	if facts(sansBold, usServings).width("Serving size")+measure.width(l.ServingMeasure)+1.5 > head {
		base += 4
	}
	p.writeRight(usPad+head, base, measure, l.ServingMeasure)
	base += 1.5
	p.box(usPad, base, head, usBar, black)
	base += usBar + 9.8
	p.write(usPad, base-4, facts(sansBold, usCalories), "Calories")
	p.write(usPad, base, facts(sansBold, usSmall), "per serving")
	p.writeRight(usPad+head, base, facts(sansBold, 26), amountOf(l.Lines[0]))
	p.h = max(p.h, base+usPad+0.5)

	p.box(xn-2, usPad, usHair, p.h-2*usPad, black)
	st := facts(sans, usSmall)
	p.place(text(note, usSmall+1.2, st, l.Footnote), xn, usPad+0.3)
	p.frame(0, 0, p.w, p.h, usBox, black)
	return p
}
