package card

import (
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
)

// panelOf draws the panel that a label's region asks for, w mm wide.
func panelOf(l *label.Label, w float64) *draw.List {
	switch {
	case l.Region == label.EU:
		return euPanel(l, w)
	case l.Columns == "dual":
		return usDualPanel(l, w)
	}
	return usPanel(l, min(w, usWidth))
}

// What is drawn under a panel of its warnings: so many, of so many letters. The
// label's text has them all.
const (
	mostWarnings = 12
	mostWarning  = 600
)

// withNotes sets what is incomplete under a panel.
func withNotes(p *draw.List, l *label.Label) *draw.List {
	w := p.W
	st := typeset.Type(draw.Sans, 6.5, black)
	parts := []*draw.List{p}
	for i, note := range say.SaidAll(l.Warnings) {
		if i == mostWarnings {
			parts = append(parts, typeset.Text(w, 8, st, say.MoreWarnings(len(l.Warnings)-i)))
			break
		}
		mark := ""
		if i == 0 && l.Gaps > 0 {
			mark = label.IncompleteMark + " "
		}
		parts = append(parts, typeset.Text(w, 8, st, mark+cut(typeset.Plain(note), mostWarning)))
	}
	return typeset.Stack(1.6, parts...)
}

// Sizes of the Nutrition Facts. Type: 21 CFR 101.9(d)(1)–(9), the least sizes.
// Bars and hairlines have no prescribed thickness; these are the ones usual in
// the agency's illustrations (read in secondary pages).
const (
	usWidth      = 66.0 // mm, our choice: a quart tub's side shows it
	usDualWidth  = 96.0
	usPad        = 1.5 // mm inside the box
	usBox        = 0.5 * typeset.Point
	usHair       = 0.25 * typeset.Point
	usBar        = 7 * typeset.Point
	usThinBar    = 3 * typeset.Point
	usPitch      = 12 * typeset.Point // 8 pt type with 4 pt leading, (d)(1)(ii)(C)
	usIndent     = 9 * typeset.Point
	usServings   = 10.0 // pt, (d)(3)
	usCalories   = 16.0 // pt, the word, (d)(5)
	usCalorieNum = 22.0 // pt, the number, (d)(5)
	usNutrient   = 8.0  // pt, (d)(1)(iii)
	usSmall      = 6.0  // pt, (d)(1)(iii)
)

func facts(f draw.Face, size float64) typeset.Style { return typeset.Type(f, size, black) }

// usPanel draws the vertical Nutrition Facts of 21 CFR 101.9(d)(12).
func usPanel(l *label.Label, w float64) *draw.List {
	p := &draw.List{W: w}
	x0, x1 := usPad, w-usPad
	usHead(p, l, x0, x1)
	calories := l.Lines[0]

	p.H += 2.6
	typeset.Write(p, x0, p.H, facts(draw.SansBold, usSmall), "Amount per serving")
	p.H += usCalorieNum * typeset.Point * 0.86
	typeset.Write(p, x0, p.H, facts(draw.SansBold, usCalories), "Calories")
	typeset.WriteRight(p, x1, p.H, facts(draw.SansBold, usCalorieNum), amountOf(calories))
	p.H += 1.2
	typeset.Fill(p, x0, p.H, x1-x0, usThinBar, black)
	p.H += usThinBar + 2.7
	typeset.WriteRight(p, x1, p.H, facts(draw.SansBold, usSmall), "% Daily Value*")
	p.H += 0.9

	wasVitamin := false
	for _, n := range l.Lines[1:] {
		if n.Vitamin && !wasVitamin {
			typeset.Fill(p, x0, p.H, x1-x0, usBar, black)
			p.H += usBar
			wasVitamin = true
		} else {
			from := x0
			if n.Indent > 1 { // the added sugars hang under the sugars, (d)(7)(i)
				from += 2 * usIndent
			}
			typeset.Fill(p, from, p.H, x1-from, usHair, black)
		}
		base := onPitch(p.H)
		usName(p, x0+float64(n.Indent)*usIndent, base, n, true)
		typeset.WriteRight(p, x1, base, dvStyle(n), n.DVText)
		p.H += usPitch
	}
	usFoot(p, l, x0, x1)
	return p
}

// usHead draws the heading down to the bar under the serving size.
func usHead(p *draw.List, l *label.Label, x0, x1 float64) {
	size := (x1 - x0) / facts(draw.SansBold, 1).Width("Nutrition Facts")
	p.H = usPad + face.CapHeight*size*typeset.Point
	typeset.Write(p, x0, p.H, facts(draw.SansBold, size), "Nutrition Facts")
	p.H += 0.24*size*typeset.Point*0.6 + 0.4
	typeset.Fill(p, x0, p.H, x1-x0, usHair, black)
	line := facts(draw.Sans, usServings)
	p.H += 0.8
	if l.ServingsText != "" {
		p.H += usServings*typeset.Point*face.CapHeight + 0.5
		typeset.Write(p, x0, p.H, line, l.ServingsText)
		p.H += 0.4
	}
	p.H += usServings*typeset.Point*face.CapHeight + 1
	end := typeset.Write(p, x0, p.H, line.Bold(), "Serving size")
	serving := line.Bold()
	if serving.Width(l.ServingMeasure) > x1-end-2 {
		serving.Size = 8 // (d)(3)(ii), where it does not fit
	}
	if serving.Width(l.ServingMeasure) > x1-end-2 {
		p.H += usServings*typeset.Point*face.CapHeight + 1
	}
	typeset.WriteRight(p, x1, p.H, serving, l.ServingMeasure)
	p.H += 1.3
	typeset.Fill(p, x0, p.H, x1-x0, usBar, black)
	p.H += usBar
}

// usName writes a nutrient's name, bold where the rule says so, and its amount
// if asked. It returns where it ends.
func usName(p *draw.List, x, y float64, n label.PanelLine, withAmount bool) float64 {
	name := n.Name
	st := facts(draw.Sans, usNutrient)
	if n.Key == "added_sugars" {
		if withAmount {
			return typeset.Write(p, x, y, st, amountOf(n)) // "Includes 12g Added Sugars"
		}
		return typeset.Write(p, x, y, st, "Incl. Added Sugars")
	}
	if n.Bold {
		st.Face = draw.SansBold
	}
	if rest, ok := strings.CutPrefix(name, "Trans"); ok {
		x = typeset.Write(p, x, y, facts(draw.SansItalic, usNutrient), "Trans")
		name = rest
	}
	x = typeset.Write(p, x, y, st, name)
	if withAmount {
		x = typeset.Write(p, x, y, facts(draw.Sans, usNutrient), " "+amountOf(n))
	}
	return x
}

func amountOf(n label.PanelLine) string { return n.Marked(n.Text) }

// usFoot draws what stands below the vitamins and closes the box.
func usFoot(p *draw.List, l *label.Label, x0, x1 float64) {
	if l.NotSignificant != "" {
		typeset.Fill(p, x0, p.H, x1-x0, usHair, black)
		t := typeset.Text(x1-x0, usNutrient+2, facts(draw.Sans, usNutrient), l.NotSignificant)
		p.Place(t, x0, p.H+1.2, 1)
		p.H += t.H + 2.2
	}
	typeset.Fill(p, x0, p.H, x1-x0, usThinBar, black)
	p.H += usThinBar + 1.3
	note := strings.TrimPrefix(l.Footnote, "*")
	st := facts(draw.Sans, usSmall)
	hang := st.Width("*") + 0.2
	t := typeset.Text(x1-x0-hang, usSmall+1.2, st, note)
	if note != l.Footnote {
		typeset.Write(p, x0, p.H+face.CapHeight*usSmall*typeset.Point, st, "*")
	}
	p.Place(t, x0+hang, p.H, 1)
	p.H += t.H + usPad + 0.4
	typeset.Frame(p, 0, 0, p.W, p.H, usBox, black)
}

// usDualPanel draws the panel with two columns, 21 CFR 101.9(e)(6), (b)(6) and
// (b)(12).
func usDualPanel(l *label.Label, w float64) *draw.List {
	p := &draw.List{W: w}
	x0, x1 := usPad, w-usPad
	usHead(p, l, x0, x1)
	col := (x1 - x0) * 0.29
	between := x1 - col
	edges := [2][2]float64{{x1 - 2*col, between - 1}, {between + 1, x1}} // of the columns
	columns := l.PanelColumns()
	dualHead(p, columns, x0, edges)
	top := p.H
	rules := func() { // down the columns' left, from top
		typeset.Fill(p, edges[0][0]-0.8, top, usHair, p.H-top, black)
		typeset.Fill(p, between, top, usHair, p.H-top, black)
	}
	p.H += 2.7
	for _, e := range edges {
		typeset.WriteRight(p, e[1], p.H, facts(draw.SansBold, usSmall), "% DV*")
	}
	p.H += 0.9
	vitamins := false
	for i, n := range l.Lines[1:] {
		if n.Vitamin && !vitamins {
			rules()
			typeset.Fill(p, x0, p.H, x1-x0, usBar, black)
			p.H += usBar
			top, vitamins = p.H, true
		} else {
			from := x0
			if n.Indent > 1 {
				from += 2 * usIndent
			}
			typeset.Fill(p, from, p.H, x1-from, usHair, black)
		}
		base := onPitch(p.H)
		usName(p, x0+float64(n.Indent)*usIndent*0.75, base, n, false)
		for k, e := range edges {
			v := columns[k].Lines[i+1]
			typeset.Write(p, e[0], base, facts(draw.Sans, usNutrient), shortLess(v))
			typeset.WriteRight(p, e[1], base, dvStyle(n), v.DVText)
		}
		p.H += usPitch
	}
	rules()
	usFoot(p, l, x0, x1)
	return p
}

// dualHead draws what the columns are per, and their calories, down to the bar.
func dualHead(p *draw.List, columns []label.PanelColumn, x0 float64, edges [2][2]float64) {
	p.H += 3
	for k, e := range edges {
		typeset.WriteRight(p, e[1], p.H, facts(draw.SansBold, usSmall), say.Capital(columns[k].Per))
	}
	p.H += usCalorieNum * typeset.Point * 0.86
	typeset.Write(p, x0, p.H, facts(draw.SansBold, usCalories), "Calories")
	for k, e := range edges {
		typeset.WriteRight(p, e[1], p.H, facts(draw.SansBold, usCalorieNum), amountOf(columns[k].Lines[0]))
	}
	p.H += 1.2
	typeset.Fill(p, x0, p.H, edges[1][1]-x0, usThinBar, black)
	p.H += usThinBar
}
