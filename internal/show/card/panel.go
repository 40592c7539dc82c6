package card

import (
	"strings"

	"ripplewright/internal/food/label"
)

// incompleteMark stands behind a figure that some ingredient leaves unknown.
const incompleteMark = "‡"

// panelOf draws the panel that a label's region asks for, w mm wide.
func panelOf(l *label.Label, w float64) *sheet {
	switch {
	case l.Region == label.EU:
		return euPanel(l, w)
	case l.Columns == "dual":
		return usDualPanel(l, w)
	}
	return usPanel(l, min(w, usWidth))
}

// withNotes sets what is incomplete under a panel.
func withNotes(p *sheet, l *label.Label) *sheet {
	w := p.w
	parts := []*sheet{p}
	for i, note := range l.Warnings {
		mark := ""
		if i == 0 && l.Gaps > 0 {
			mark = incompleteMark + " "
		}
		parts = append(parts, text(w, 8, style{sans, 6.5, black}, mark+plain(note)))
	}
	return stack(1.6, parts...)
}

// Sizes of the Nutrition Facts. Type: 21 CFR 101.9(d)(1)–(9), the least sizes.
// Bars and hairlines have no prescribed thickness; these are the ones usual in
// the agency's illustrations (read in secondary pages).
const (
	usWidth      = 66.0 // mm, our choice: a quart tub's side shows it
	usDualWidth  = 96.0
	usPad        = 1.5 // mm inside the box
	usBox        = 0.5 * point
	usHair       = 0.25 * point
	usBar        = 7 * point
	usThinBar    = 3 * point
	usPitch      = 12 * point // 8 pt type with 4 pt leading, (d)(1)(ii)(C)
	usIndent     = 9 * point
	usServings   = 10.0 // pt, (d)(3)
	usCalories   = 16.0 // pt, the word, (d)(5)
	usCalorieNum = 22.0 // pt, the number, (d)(5)
	usNutrient   = 8.0  // pt, (d)(1)(iii)
	usSmall      = 6.0  // pt, (d)(1)(iii)
)

func facts(f face, size float64) style { return style{f, size, black} }

// usPanel draws the vertical Nutrition Facts of 21 CFR 101.9(d)(12).
func usPanel(l *label.Label, w float64) *sheet {
	p := &sheet{w: w}
	x0, x1 := usPad, w-usPad
	usHead(p, l, x0, x1)
	calories := l.Lines[0]

	p.h += 2.6
	p.write(x0, p.h, facts(sansBold, usSmall), "Amount per serving")
	p.h += usCalorieNum * point * 0.86
	p.write(x0, p.h, facts(sansBold, usCalories), "Calories")
	p.writeRight(x1, p.h, facts(sansBold, usCalorieNum), amountOf(calories))
	p.h += 1.2
	p.box(x0, p.h, x1-x0, usThinBar, black)
	p.h += usThinBar + 2.7
	p.writeRight(x1, p.h, facts(sansBold, usSmall), "% Daily Value*")
	p.h += 0.9

	wasVitamin := false
	for _, n := range l.Lines[1:] {
		if n.Vitamin && !wasVitamin {
			p.box(x0, p.h, x1-x0, usBar, black)
			p.h += usBar
			wasVitamin = true
		} else {
			from := x0
			if n.Indent > 1 { // the added sugars hang under the sugars, (d)(7)(i)
				from += 2 * usIndent
			}
			p.box(from, p.h, x1-from, usHair, black)
		}
		base := p.h + usPitch - (usPitch-xHeight*usNutrient*point)/2 + 0.1
		usName(p, x0+float64(n.Indent)*usIndent, base, n, true)
		percent := facts(sansBold, usNutrient) // required by (d)(7)(ii); those of vitamins by (d)(8), not bold
		if n.Vitamin {
			percent.face = sans
		}
		p.writeRight(x1, base, percent, n.DVText)
		p.h += usPitch
	}
	usFoot(p, l, x0, x1)
	return p
}

// usHead draws the heading down to the bar under the serving size.
func usHead(p *sheet, l *label.Label, x0, x1 float64) {
	size := (x1 - x0) / facts(sansBold, 1).width("Nutrition Facts")
	p.h = usPad + capHeight*size*point
	p.write(x0, p.h, facts(sansBold, size), "Nutrition Facts")
	p.h += 0.24*size*point*0.6 + 0.4
	p.box(x0, p.h, x1-x0, usHair, black)
	line := facts(sans, usServings)
	p.h += 0.8
	if l.ServingsText != "" {
		p.h += usServings*point*capHeight + 0.5
		p.write(x0, p.h, line, l.ServingsText)
		p.h += 0.4
	}
	p.h += usServings*point*capHeight + 1
	end := p.write(x0, p.h, line.bold(), "Serving size")
	serving := line.bold()
	if serving.width(l.ServingMeasure) > x1-end-2 {
		serving.size = 8 // (d)(3)(ii), where it does not fit
	}
	if serving.width(l.ServingMeasure) > x1-end-2 {
		p.h += usServings*point*capHeight + 1
	}
	p.writeRight(x1, p.h, serving, l.ServingMeasure)
	p.h += 1.3
	p.box(x0, p.h, x1-x0, usBar, black)
	p.h += usBar
}

// usName writes a nutrient's name, bold where the rule says so, and its amount
// if asked. It returns where it ends.
func usName(p *sheet, x, y float64, n label.Line, withAmount bool) float64 {
	name := n.Name
	st := facts(sans, usNutrient)
	if n.Key == "added_sugars" {
		if withAmount {
			return p.write(x, y, st, amountOf(n)) // "Includes 12g Added Sugars"
		}
		return p.write(x, y, st, "Incl. Added Sugars")
	}
	if n.Bold {
		st.face = sansBold
	}
	if rest, ok := strings.CutPrefix(name, "Trans"); ok {
		x = p.write(x, y, facts(sansItalic, usNutrient), "Trans")
		name = rest
	}
	x = p.write(x, y, st, name)
	if withAmount {
		x = p.write(x, y, facts(sans, usNutrient), " "+amountOf(n))
	}
	return x
}

func amountOf(n label.Line) string {
	if n.Incomplete {
		return n.Text + incompleteMark
	}
	return n.Text
}

// usFoot draws what stands below the vitamins and closes the box.
func usFoot(p *sheet, l *label.Label, x0, x1 float64) {
	if l.NotSignificant != "" {
		p.box(x0, p.h, x1-x0, usHair, black)
		t := text(x1-x0, usNutrient+2, facts(sans, usNutrient), l.NotSignificant)
		p.place(t, x0, p.h+1.2)
		p.h += t.h + 2.2
	}
	p.box(x0, p.h, x1-x0, usThinBar, black)
	p.h += usThinBar + 1.3
	note := strings.TrimPrefix(l.Footnote, "*")
	st := facts(sans, usSmall)
	hang := st.width("*") + 0.2
	t := text(x1-x0-hang, usSmall+1.2, st, note)
	if note != l.Footnote {
		p.write(x0, p.h+capHeight*usSmall*point, st, "*")
	}
	p.place(t, x0+hang, p.h)
	p.h += t.h + usPad + 0.4
	p.frame(0, 0, p.w, p.h, usBox, black)
}

// columnsOf returns the columns of a panel from the left, and what each is per.
// A second one that the maker has chosen stands at the left of that per
// container, 21 CFR 101.9(b)(6) (the order from memory).
func columnsOf(l *label.Label) (per []string, lines [][]label.Line) {
	first := "per serving"
	if l.Region == label.EU {
		first = "per 100 g"
	}
	switch {
	case len(l.Second) != len(l.Lines):
		return []string{first}, [][]label.Line{l.Lines}
	case l.Region == label.US && l.SecondColumn != label.PerContainer:
		return []string{"per " + l.SecondColumn, "per container"}, [][]label.Line{l.Second, l.Lines}
	}
	return []string{first, "per " + l.SecondColumn}, [][]label.Line{l.Lines, l.Second}
}

// usDualPanel draws the panel with two columns, 21 CFR 101.9(e)(6), (b)(6) and
// (b)(12).
func usDualPanel(l *label.Label, w float64) *sheet {
	p := &sheet{w: w}
	x0, x1 := usPad, w-usPad
	usHead(p, l, x0, x1)
	col := (x1 - x0) * 0.29
	a, b := x1-2*col, x1-col // left edges of the columns

	per, columns := columnsOf(l)
	p.h += 3
	p.writeRight(b-1, p.h, facts(sansBold, usSmall), capital(per[0]))
	p.writeRight(x1, p.h, facts(sansBold, usSmall), capital(per[1]))
	p.h += usCalorieNum * point * 0.86
	p.write(x0, p.h, facts(sansBold, usCalories), "Calories")
	p.writeRight(b-1, p.h, facts(sansBold, usCalorieNum), amountOf(columns[0][0]))
	p.writeRight(x1, p.h, facts(sansBold, usCalorieNum), amountOf(columns[1][0]))
	p.h += 1.2
	p.box(x0, p.h, x1-x0, usThinBar, black)
	p.h += usThinBar
	top := p.h
	p.h += 2.7
	p.writeRight(b-1, p.h, facts(sansBold, usSmall), "% DV*")
	p.writeRight(x1, p.h, facts(sansBold, usSmall), "% DV*")
	p.h += 0.9
	vitamins := false
	rules := func() {
		p.box(a-0.8, top, usHair, p.h-top, black)
		p.box(b, top, usHair, p.h-top, black)
	}
	for i, n := range l.Lines {
		if i == 0 {
			continue
		}
		if n.Vitamin && !vitamins {
			rules()
			p.box(x0, p.h, x1-x0, usBar, black)
			p.h += usBar
			top, vitamins = p.h, true
		} else {
			from := x0
			if n.Indent > 1 {
				from += 2 * usIndent
			}
			p.box(from, p.h, x1-from, usHair, black)
		}
		base := p.h + usPitch - (usPitch-xHeight*usNutrient*point)/2 + 0.1
		usName(p, x0+float64(n.Indent)*usIndent*0.75, base, n, false)
		for k, v := range [...]label.Line{columns[0][i], columns[1][i]} {
			left, right := a, b-1
			if k == 1 {
				left, right = b+1, x1
			}
			st := facts(sans, usNutrient)
			v.Text = strings.Replace(v.AmountText(), "less than ", "<", 1) // which 21 CFR 101.9(c) allows
			p.write(left, base, st, amountOf(v))
			if !n.Vitamin {
				st = st.bold()
			}
			p.writeRight(right, base, st, v.DVText)
		}
		p.h += usPitch
	}
	rules()
	usFoot(p, l, x0, x1)
	return p
}

// euPanel draws the table of Regulation (EU) No 1169/2011, Annex XV, with
// numbers aligned at the decimal point (Article 34(2)). At 8 pt the letter x is
// 1.49 mm high, over the 1.2 mm of Article 13(2).
func euPanel(l *label.Label, w float64) *sheet {
	const size, pitch = 8.0, 4.5
	st := facts(sans, size)
	p := &sheet{w: w}
	x0, x1 := 1.8, w-1.8
	p.h = 5.6
	p.write(x0, p.h, facts(sansBold, 11), "Nutrition declaration")
	p.h += 1.9
	p.box(x0, p.h, x1-x0, 0.5, black)
	second := len(l.Second) == len(l.Lines)
	points := [2]float64{x0 + 0.62*(x1-x0), x0 + 0.62*(x1-x0)} // of the decimal points
	if second {
		points = [2]float64{x0 + 0.515*(x1-x0), x0 + 0.745*(x1-x0)}
	}
	head := facts(sansBold, 7)
	p.h += 3.6
	p.writeCentre(points[0]+1, p.h, head, "per 100 g")
	if second {
		p.writeCentre(points[1]+1, p.h, head, "per portion")
		p.writeRight(x1, p.h, head, "RI*")
		p.h += 3
		p.writeCentre(points[1]+1, p.h, facts(sans, 7), "("+strings.TrimPrefix(l.ServingMeasure, "portion of ")+")")
		p.writeRight(x1, p.h, facts(sans, 7), "portion")
	}
	p.h += 1.5
	for i, n := range l.Lines {
		if n.Key != "energy_kcal" { // the two energies are one line
			p.box(x0, p.h, x1-x0, 0.12, black)
		}
		base := p.h + pitch - 1.35
		if n.Key != "energy_kcal" {
			p.write(x0+3*float64(n.Indent), base, st, n.Name)
		}
		atPoint(p, points[0], base, st, amountOf(n))
		if second {
			atPoint(p, points[1], base, st, amountOf(l.Second[i]))
			if n.Key != "energy_kj" { // one share for the energy
				p.writeRight(x1, base, st, l.Second[i].DVText)
			}
		}
		p.h += pitch
	}
	p.box(x0, p.h, x1-x0, 0.35, black)
	notes := []*sheet{text(x1-x0, 8.8, facts(sans, 7), l.ServingsText)}
	if second {
		notes = append([]*sheet{text(x1-x0, 8.8, facts(sans, 7), "* "+strings.TrimPrefix(l.Footnote, "*"))}, notes...)
	}
	t := stack(1.4, notes...)
	p.place(t, x0, p.h+1.6)
	p.h += t.h + 3.6
	p.frame(0, 0, w, p.h, usBox, black)
	return p
}

// atPoint writes an amount so that its decimal point, or the end of its whole
// number, is at x.
func atPoint(p *sheet, x, y float64, st style, s string) {
	end := strings.IndexFunc(s, func(r rune) bool { return !(r >= '0' && r <= '9' || r == '<' || r == '\u2009') })
	if end < 0 {
		end = len(s)
	}
	p.writeRight(x, y, st, s[:end])
	p.write(x, y, st, s[end:])
}
