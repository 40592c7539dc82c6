package card

import (
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
)

// usTabularPanel draws the broad, low Nutrition Facts of 21 CFR
// 101.9(d)(11)(iii): the heading and the calories at the left, the nutrients in
// two columns, the vitamins under them and the footnote at the right. Sizes:
// Calories 10 pt or more, the serving size 9 pt, nutrients 8 pt, the rest 6 pt.
func usTabularPanel(l *label.Label) *draw.List {
	const note = 33.0
	head := broadHeadWidth(l)
	lists, vitamins := inTwoColumns(l)
	x0 := usPad + head + 3
	col := columnWidth(lists, vitamins)
	xn := x0 + 2*col + 2
	p := &draw.List{W: xn + note + usPad}

	for side, list := range lists {
		left := x0 + float64(side)*col
		tabularColumn(p, list, left, left+col-2)
	}
	bottom := tabularTop + float64(max(len(lists[0]), len(lists[1])))*usPitch
	typeset.Fill(p, x0, bottom, 2*col-2, usBar, black)
	vit := typeset.Text(2*col-2, usNutrient+4, facts(draw.Sans, usNutrient), vitamins)
	p.Place(vit, x0, bottom+usBar+1.4, 1)
	p.H = bottom + usBar + 1.4 + vit.H + usPad + 0.4

	y := broadHead(p, l, head) + 9.8
	typeset.Write(p, usPad, y-4, facts(draw.SansBold, usCalories), "Calories")
	typeset.Write(p, usPad, y, facts(draw.SansBold, usSmall), "per serving")
	typeset.WriteRight(p, usPad+head, y, facts(draw.SansBold, 26), amountOf(l.Lines[0]))
	p.H = max(p.H, y+usPad+0.5)

	typeset.Fill(p, xn-2, usPad, usHair, p.H-2*usPad, black)
	p.Place(typeset.Text(note, usSmall+1.2, facts(draw.Sans, usSmall), l.Footnote), xn, usPad+0.3, 1)
	typeset.Frame(p, 0, 0, p.W, p.H, usBox, black)
	return p
}

// tabularTop is where the nutrients of a broad panel begin, mm.
const tabularTop = usPad + 0.3 + 2.6

// inTwoColumns parts the nutrients, fat to sodium and carbohydrate to protein,
// and has the vitamins, and what is not significant, as one line.
func inTwoColumns(l *label.Label) (lists [2][]label.PanelLine, vitamins string) {
	var all []string
	side := 0
	for _, n := range l.Lines[1:] {
		if n.Key == "total_carbohydrate" {
			side = 1
		}
		if n.Vitamin {
			all = append(all, n.Name+"\u00a0"+amountOf(n)+"\u00a0"+n.DVText)
		} else {
			lists[side] = append(lists[side], n)
		}
	}
	if l.NotSignificant != "" {
		all = append(all, l.NotSignificant)
	}
	return lists, strings.Join(all, " • ")
}

// columnWidth is as much as the longest line needs, and half of the vitamins, mm.
func columnWidth(lists [2][]label.PanelLine, vitamins string) float64 {
	col := max(50, (facts(draw.Sans, usNutrient).Width(vitamins)+3)/2)
	for _, list := range lists {
		for _, n := range list {
			end := usName(&draw.List{}, float64(n.Indent)*usIndent, 0, n, true)
			col = max(col, end+3+facts(draw.SansBold, usNutrient).Width(n.DVText)+2)
		}
	}
	return col
}

// tabularColumn draws one of the two columns of nutrients.
func tabularColumn(p *draw.List, list []label.PanelLine, left, right float64) {
	small := facts(draw.SansBold, usSmall)
	y := usPad + 0.3 + face.CapHeight*usSmall*typeset.Point
	typeset.Write(p, left, y, small, "Amount per serving")
	typeset.WriteRight(p, right, y, small, "% Daily Value*")
	for i, n := range list {
		edge := tabularTop + float64(i)*usPitch
		from := left
		if n.Indent > 1 {
			from += 2 * usIndent
		}
		typeset.Fill(p, from, edge, right-from, usHair, black)
		base := onPitch(edge)
		usName(p, left+float64(n.Indent)*usIndent, base, n, true)
		typeset.WriteRight(p, right, base, facts(draw.SansBold, usNutrient), n.DVText)
	}
}

// onPitch is the base line of a nutrient whose line begins at edge, mm.
func onPitch(edge float64) float64 {
	return edge + usPitch - (usPitch-face.XHeight*usNutrient*typeset.Point)/2 + 0.1
}

func broadHeadWidth(l *label.Label) float64 {
	return max(46, facts(draw.Sans, usServings).Width(l.ServingsText))
}

// broadHead draws the heading of a broad panel at its left, so wide, down to the
// bar under the serving size, and returns where that ends.
func broadHead(p *draw.List, l *label.Label, head float64) float64 {
	size := head / facts(draw.SansBold, 1).Width("Nutrition Facts")
	y := usPad + face.CapHeight*size*typeset.Point
	typeset.Write(p, usPad, y, facts(draw.SansBold, size), "Nutrition Facts")
	y += 1.6
	typeset.Fill(p, usPad, y, head, usHair, black)
	if l.ServingsText != "" {
		y += 4.4
		typeset.Write(p, usPad, y, facts(draw.Sans, usServings), l.ServingsText)
	}
	y += 4.4
	typeset.Write(p, usPad, y, facts(draw.SansBold, usServings), "Serving size")
	measure := facts(draw.SansBold, 9) // (d)(11)(iii)
	if facts(draw.SansBold, usServings).Width("Serving size")+measure.Width(l.ServingMeasure)+1.5 > head {
		y += 4
	}
	typeset.WriteRight(p, usPad+head, y, measure, l.ServingMeasure)
	y += 1.5
	typeset.Fill(p, usPad, y, head, usBar, black)
	return y + usBar
}

// usTabularDualPanel draws a broad panel with two columns: the heading, the
// calories and the footnote at the left, one table at the right.
func usTabularDualPanel(l *label.Label) *draw.List {
	p := &draw.List{}
	columns, head := l.PanelColumns(), broadHeadWidth(l)
	y := broadHead(p, l, head)
	for _, of := range columns {
		y += usCalorieNum * typeset.Point * 0.86
		typeset.Write(p, usPad, y, facts(draw.SansBold, smallCalories), "Calories")
		typeset.Write(p, usPad, y+2.6, facts(draw.SansBold, usSmall), of.Per)
		typeset.WriteRight(p, usPad+head, y, facts(draw.SansBold, usCalorieNum), amountOf(of.Lines[0]))
		y += 3
	}
	note := typeset.Text(head, usSmall+1.2, facts(draw.Sans, usSmall), strings.TrimSpace(l.Footnote+" "+l.NotSignificant))
	p.Place(note, usPad, y+1.4, 1)
	right, bottom := dualTable(p, columns, usPad+head+3)
	p.W, p.H = right+usPad, max(y+1.4+note.H+usPad, bottom+usPad/3) // the last line has air of its own
	typeset.Frame(p, 0, 0, p.W, p.H, usBox, black)
	return p
}

// dualTable draws the nutrients of both columns from x on, and returns where it
// ends.
func dualTable(p *draw.List, columns []label.PanelColumn, x float64) (rightmost, bottom float64) {
	st := facts(draw.Sans, usNutrient)
	name, amount := 0.0, 0.0
	for i, n := range columns[0].Lines[1:] {
		name = max(name, usName(&draw.List{}, float64(n.Indent)*usIndent*0.75, 0, n, false))
		for k := range columns {
			amount = max(amount, st.Width(shortLess(columns[k].Lines[i+1])))
		}
	}
	col := amount + st.Bold().Width("100%") + 1.5 + 1
	right := [2]float64{x + name + 3 + col, x + name + 3 + 2*col + 2}
	top := usPad + face.CapHeight*usSmall*typeset.Point
	for k, of := range columns {
		typeset.WriteRight(p, right[k], top, facts(draw.SansBold, usSmall), say.Capital(of.Per))
		typeset.WriteRight(p, right[k], top+2.6, facts(draw.SansBold, usSmall), "% DV*")
	}
	at := top + 3.4
	vitamins := false
	for i, n := range columns[0].Lines[1:] {
		if n.Vitamin && !vitamins {
			vitamins = true
			typeset.Fill(p, x, at, right[1]-x, usThinBar, black)
			at += usThinBar
		} else {
			typeset.Fill(p, x, at, right[1]-x, usHair, black)
		}
		base := onPitch(at)
		usName(p, x+float64(n.Indent)*usIndent*0.75, base, n, false)
		for k := range columns {
			v := columns[k].Lines[i+1]
			typeset.Write(p, right[k]-col+1, base, st, shortLess(v))
			typeset.WriteRight(p, right[k], base, dvStyle(n), v.DVText)
		}
		at += usPitch
	}
	for k := range columns { // down the columns' left
		typeset.Fill(p, right[k]-col, usPad, usHair, at-usPad, black)
	}
	return right[1], at
}

// dvStyle is how a Daily Value is set: bold by 21 CFR 101.9(d)(7)(ii), those of
// vitamins by (d)(8) not.
func dvStyle(n label.PanelLine) typeset.Style {
	if n.Vitamin {
		return facts(draw.Sans, usNutrient)
	}
	return facts(draw.SansBold, usNutrient)
}

// shortLess is a figure of a column, with the sign that 21 CFR 101.9(c) allows
// for "less than".
func shortLess(n label.PanelLine) string {
	n.Text = strings.Replace(n.AmountText(), "less than ", "<", 1)
	return amountOf(n)
}
