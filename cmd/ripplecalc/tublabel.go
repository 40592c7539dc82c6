package main

import (
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/selling"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/sticker"
	"ripplewright/internal/work/design"
)

// tubFlags are those flags of label that are about the whole label of a tub, as
// typed.
type tubFlags struct {
	place, sale, langs         string
	made, keeps, dateForm      string
	maker, lot, storage, brand string
	tub, tubMM                 string
	sheet                      string
	net, margin, gap           float64
	grams, front               bool
	copies, first              int
}

func (t *tubFlags) on(f *flag.FlagSet) {
	f.StringVar(&t.place, "place", "", "")
	f.StringVar(&t.sale, "sale", string(onpack.Shop), "")
	f.StringVar(&t.langs, "lang", "", "")
	f.StringVar(&t.made, "made", "", "")
	f.StringVar(&t.keeps, "keeps", "", "")
	f.StringVar(&t.dateForm, "date", string(onpack.ByDay), "")
	f.StringVar(&t.maker, "maker", "", "")
	f.StringVar(&t.lot, "lot", "", "")
	f.StringVar(&t.storage, "storage", "", "")
	f.StringVar(&t.brand, "brand", "", "")
	f.StringVar(&t.tub, "tub", "", "")
	f.StringVar(&t.tubMM, "tub-mm", "", "")
	f.StringVar(&t.sheet, "sheet", "", "")
	f.Float64Var(&t.net, "net", 0, "")
	f.Float64Var(&t.margin, "margin", 8, "")
	f.Float64Var(&t.gap, "gap", 2, "")
	f.BoolVar(&t.grams, "grams", false, "")
	f.BoolVar(&t.front, "front-of-pack", false, "")
	f.IntVar(&t.copies, "copies", 1, "")
	f.IntVar(&t.first, "first", 1, "")
}

// where returns the place of sale, and whether the whole label of a tub is asked
// for rather than the panel alone. The place decides the region.
func (t *tubFlags) where(c *command, flags *flag.FlagSet, region *string) (place onpack.Place, whole bool, err error) {
	given := map[string]bool{}
	flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
	if t.place == "" {
		for _, name := range tubFlagNames {
			if given[name] {
				return "", false, c.misused("--%s is about the label of a tub: say with --place where it is sold", name)
			}
		}
		if *region == string(label.EU) {
			return onpack.EU, false, nil
		}
		return onpack.US, false, nil
	}
	if place, err = onpack.ParsePlace(t.place); err != nil {
		return "", false, c.misused("--place %s: %v", echo.Quoted(t.place), err)
	}
	if given["region"] && *region != string(place.Region()) {
		return "", false, c.misused("--place %s has the rules of --region %s", place, place.Region())
	}
	*region = string(place.Region())
	return place, true, nil
}

// tubFlagNames are the flags that make sense only with --place.
var tubFlagNames = []string{"sale", "lang", "made", "keeps", "date", "maker", "lot", "storage", "brand", "tub", "tub-mm", "sheet", "net", "margin",
	"gap", "grams", "front-of-pack", "copies", "first"}

// mostCopies of a label in one file: a stall's day.
const mostCopies = 500

// pack reads the flags over what the design says.
func (t *tubFlags) pack(c *command, d design.Design, place onpack.Place, words onpack.Words) (p onpack.Pack, err error) {
	bad := func(flag, value string, err error) error {
		return c.misused("--%s %s: %v", flag, echo.Quoted(value), err)
	}
	sale, err := onpack.ParseSale(t.sale)
	if err != nil {
		return p, bad("sale", t.sale, err)
	}
	p = selling.Pack(d, place, sale)
	p.Languages = []string{place.Language()}
	if t.langs != "" {
		if p.Languages, err = words.ParseLanguages(t.langs); err != nil {
			return p, bad("lang", t.langs, err)
		}
	}
	if t.made != "" {
		if p.Made, err = time.Parse(time.DateOnly, t.made); err != nil {
			return p, c.misused("--made %s: a day is written as 2026-07-14", echo.Quoted(t.made))
		}
	}
	if t.keeps != "" {
		if p.Durability, err = onpack.ParseDurability(t.keeps); err != nil {
			return p, bad("keeps", t.keeps, err)
		}
	}
	p.Form = onpack.DateForm(t.dateForm)
	if p.Form != onpack.ByDay && p.Form != onpack.ByMonth && p.Form != onpack.ByYear {
		return p, c.misused("--date %s is not one of day, month, year", echo.Quoted(t.dateForm))
	}
	p.Maker, p.Lot, p.WithGrams = t.maker, t.lot, t.grams
	if t.storage != "" {
		p.Storage = t.storage
	}
	if t.net < 0 || t.net > 20000 || t.net != t.net {
		return p, c.misused("--net is a volume in mL, up to 20000")
	}
	p.NominalML = t.net
	if t.tub != "" && t.tubMM != "" {
		return p, c.misused("--tub and --tub-mm both say what tub it is")
	}
	switch {
	case t.tub != "":
		if p.Tub, err = onpack.TubNamed(t.tub); err != nil {
			return p, bad("tub", t.tub, err)
		}
	case t.tubMM != "":
		if p.Tub, err = onpack.ParseTub(t.tubMM); err != nil {
			return p, bad("tub-mm", t.tubMM, err)
		}
	}
	if t.copies < 1 || t.copies > mostCopies {
		return p, c.misused("--copies is from 1 to %d", mostCopies)
	}
	return p, nil
}

// print reads how the labels go to paper.
func (t *tubFlags) print(c *command) (sticker.Print, error) {
	o := sticker.Print{FirstFree: t.first - 1, Copies: t.copies}
	if t.sheet == "" {
		return o, nil
	}
	size, ok := onpack.PaperMM[strings.ToLower(t.sheet)]
	if !ok {
		w, h, both := strings.Cut(strings.ToLower(t.sheet), "x")
		var err1, err2 error
		size[0], err1 = strconv.ParseFloat(w, 64)
		size[1], err2 = strconv.ParseFloat(h, 64)
		if !both || err1 != nil || err2 != nil || !(size[0] >= 50 && size[0] <= 1000 && size[1] >= 50 && size[1] <= 1000) {
			return o, c.misused("--sheet %s is not a4, a5, letter or a size in mm such as 210x297", echo.Quoted(t.sheet))
		}
	}
	if !(t.margin >= 0 && t.margin <= 50 && t.gap >= 0 && t.gap <= 50) {
		return o, c.misused("--margin and --gap are from 0 to 50 mm")
	}
	o.Sheet = onpack.Sheet{WidthMM: size[0], HeightMM: size[1], MarginMM: t.margin, GapMM: t.gap}
	return o, nil
}

// labelWords returns the words of labels that the program carries.
func labelWords() (onpack.Words, error) {
	f, err := assets.LabelWords.Open("label/words.csv")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return onpack.ReadWords(f)
}

// content is the label of a tub, laid out.
func (t *tubFlags) content(d design.Design, r *model.Result, l *label.Label, p onpack.Pack, words onpack.Words) (sticker.Content, onpack.Food) {
	food := selling.Food(d, r, l, p.Place)
	c := sticker.Content{Place: p.Place, Tub: p.Tub, Languages: p.Languages, Elements: onpack.Elements(food, p, words),
		Panel: l, Words: words, Brand: t.brand, NominalML: food.HoldsML}
	if c.Brand == "" {
		c.Brand = d.Name
	}
	if p.NominalML > 0 {
		c.NominalML = p.NominalML
	}
	if t.front {
		c.FrontOfPack, c.FrontPortion = sticker.FrontOf(l)
	}
	return c, food
}

// write draws the labels into a file; one that lacks an element is refused.
func (t *tubFlags) write(c *command, path string, content sticker.Content, food onpack.Food, p onpack.Pack, words onpack.Words, title string) error {
	if missing := onpack.Missing(content.Elements); len(missing) > 0 {
		var all []string
		for _, e := range missing {
			all = append(all, fmt.Sprintf("%s: add %s (%s)", e.Key, echo.Plain(e.Text), e.Section))
		}
		return fmt.Errorf("the label lacks what is due:\n  %s", strings.Join(all, "\n  "))
	}
	o, err := t.print(c)
	if err != nil {
		return err
	}
	var copies []sticker.Content
	lot := slices.ContainsFunc(content.Elements, func(e onpack.Element) bool { return e.Key == onpack.Lot && e.State == onpack.Filled })
	for i := range o.Copies {
		one := content
		if lot && o.Copies > 1 {
			q := p
			if q.Lot == "" {
				q.Lot = onpack.LotOf(p.Made)
			}
			q.Lot = fmt.Sprintf("%s-%d", q.Lot, i+1)
			one.Elements = onpack.Elements(food, q, words)
		}
		copies = append(copies, one)
	}
	pages, err := sticker.Draw(copies, o)
	if err != nil {
		return err
	}
	return card.WritePages(path, title, pages)
}

// answer is what is printed of it.
func (t *tubFlags) answer(l report.Label, content sticker.Content, p onpack.Pack, food onpack.Food) report.TubLabel {
	out := report.TubLabel{Label: l, Place: p.Place, Sale: p.Sale, Languages: p.Languages, Elements: content.Elements, FrozenML: food.HoldsML}
	faces, err := sticker.Faces(content)
	for _, f := range faces {
		out.Faces = append(out.Faces, report.TubFace{Name: f.Name, WidthMM: f.WidthMM, HeightMM: f.HeightMM, LeastLetterMM: f.LeastMM, Fits: f.Fits(), Why: f.Why})
	}
	_ = err // each face says why it does not fit
	return out
}
