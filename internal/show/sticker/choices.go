package sticker

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/selling"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// Choices are what a maker says of a label beside the design, as typed; "" is what
// is usual.
type Choices struct {
	Place, Sale, Languages string // "uk", "stall", "en,de"
	Made, Keeps, Date      string // "2026-07-14", "90d" or "6m", "day"
	Maker, Lot, Storage    string
	Contact                string // where to ask for the nutrition of a package too small for a panel; "": the maker
	Brand                  string // the name of the flavour; "": the design's
	Tub, TubMM             string // a tub's name, or its sizes; both "": the design's own
	NetML                  string // the quantity declared
	Grams, FrontOfPack     bool
	Exempt                 bool   // no panel: the maker sells little
	Lid                    bool   // a label for the lid too
	Article                string // a 13-digit number of the maker's, for its bars
	Sheet, Margin, Gap     string // "a4" or "210x297", mm, mm
	First, Copies          string // from 1
}

// mostCopies of a label in one file: a stall's day.
const mostCopies = 500

// The ranges of what is typed in mm and mL.
const mostNetML, mostMarginMM, leastPaperMM, mostPaperMM = 20000.0, 50.0, 50.0, 1000.0

// Pack reads the choices over what the design says. Errors: *onpack.ChoiceError.
func (t Choices) Pack(d design.Design, words onpack.Words) (p onpack.Pack, err error) {
	wrong := func(field, typed string, err error) (onpack.Pack, error) {
		return onpack.Pack{}, onpack.Unreadable(field, typed, err)
	}
	place, err := onpack.ParsePlace(t.Place)
	if err != nil {
		return wrong("place", t.Place, err)
	}
	sale := onpack.Shop
	if t.Sale != "" {
		if sale, err = onpack.ParseSale(t.Sale); err != nil {
			return wrong("sale", t.Sale, err)
		}
	}
	p = selling.Pack(d, place, sale)
	p.Languages = []string{place.Language()}
	if t.Languages != "" {
		if p.Languages, err = words.ParseLanguages(t.Languages); err != nil {
			return wrong("lang", t.Languages, err)
		}
	}
	if t.Made != "" {
		if p.Made, err = time.Parse(time.DateOnly, strings.TrimSpace(t.Made)); err != nil {
			return wrong("made", t.Made, flaw.New("a day is written as 2026-07-14"))
		}
	}
	if t.Keeps != "" {
		if p.Durability, err = onpack.ParseDurability(t.Keeps); err != nil {
			return wrong("keeps", t.Keeps, err)
		}
	}
	if p.Form = onpack.DateForm(t.Date); t.Date != "" && !slices.Contains([]onpack.DateForm{onpack.ByDay, onpack.ByMonth, onpack.ByYear}, p.Form) {
		return wrong("date", t.Date, flaw.New("it is not one of day, month, year"))
	}
	p.Maker, p.Lot, p.WithGrams, p.Exempt = t.Maker, t.Lot, t.Grams, t.Exempt
	if t.Storage != "" {
		p.Storage = t.Storage
	}
	if t.NetML != "" {
		if p.NominalML, err = number(t.NetML, 0, mostNetML); err != nil {
			return wrong("net", t.NetML, err)
		}
	}
	if t.Article != "" {
		if err := onpack.CheckArticle(t.Article); err != nil {
			return wrong("article", t.Article, err)
		}
	}
	switch {
	case t.Tub != "" && t.TubMM != "":
		return wrong("tub-mm", t.TubMM, flaw.New("a name and sizes both say what tub it is"))
	case t.Tub != "":
		if p.Tub, err = onpack.TubNamed(t.Tub); err != nil {
			return wrong("tub", t.Tub, err)
		}
	case t.TubMM != "":
		if p.Tub, err = onpack.ParseTub(t.TubMM); err != nil {
			return wrong("tub-mm", t.TubMM, err)
		}
	}
	return p, nil
}

// Print reads how the labels go to paper. Errors: *onpack.ChoiceError.
func (t Choices) Print() (o Print, err error) {
	o.Copies = 1
	if t.Copies != "" {
		if o.Copies, err = whole(t.Copies, mostCopies); err != nil {
			return Print{}, onpack.Unreadable("copies", t.Copies, err)
		}
	}
	if t.First != "" {
		first, err := whole(t.First, mostCopies)
		if err != nil {
			return Print{}, onpack.Unreadable("first", t.First, err)
		}
		o.FirstFree = first - 1
	}
	if t.Sheet == "" {
		return o, nil
	}
	size, known := onpack.PaperMM[strings.ToLower(t.Sheet)]
	if !known {
		w, h, both := strings.Cut(strings.ToLower(t.Sheet), "x")
		var wErr, hErr error
		size[0], wErr = number(w, leastPaperMM, mostPaperMM)
		size[1], hErr = number(h, leastPaperMM, mostPaperMM)
		if !both || wErr != nil || hErr != nil {
			return Print{}, onpack.Unreadable("sheet", t.Sheet, flaw.New("it is not a4, a5, letter or a size in mm such as 210x297"))
		}
	}
	o.Sheet = onpack.Sheet{WidthMM: size[0], HeightMM: size[1], MarginMM: usualMarginMM, GapMM: usualGapMM}
	for _, x := range []struct {
		field, typed string
		to           *float64
	}{{"margin", t.Margin, &o.Sheet.MarginMM}, {"gap", t.Gap, &o.Sheet.GapMM}} {
		if x.typed != "" {
			if *x.to, err = number(x.typed, 0, mostMarginMM); err != nil {
				return Print{}, onpack.Unreadable(x.field, x.typed, err)
			}
		}
	}
	return o, nil
}

// Margin and gap of a sheet where nothing is said, mm.
const usualMarginMM, usualGapMM = 8, 2

func number(s string, least, most float64) (float64, error) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(s), ",", ".", 1), 64)
	if err != nil || math.IsNaN(v) || v < least || v > most {
		return 0, flaw.New("it is not a number from %g to %g", least, most)
	}
	return v, nil
}

func whole(s string, most int) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || n < 1 || n > most {
		return 0, flaw.New("it is not a whole number from 1 to %d", most)
	}
	return n, nil
}

// Of brings a design, its result, its panel under the rules of the place and a
// pack together into what stands on the tub.
func (t Choices) Of(d design.Design, r *model.Result, l *label.Label, p onpack.Pack, words onpack.Words) (Content, onpack.Food) {
	food := selling.Food(d, r, l, p.Place)
	c := Content{Place: p.Place, Tub: p.Tub, Languages: p.Languages, Elements: onpack.Elements(food, p, words),
		Panel: l, Words: words, Brand: t.Brand, NominalML: food.HoldsML, Lid: t.Lid, Article: t.Article, Inquiries: t.Contact}
	if c.Inquiries == "" {
		c.Inquiries = strings.Join(strings.FieldsFunc(p.Maker, func(r rune) bool { return r == '\n' }), ", ")
	}
	if c.Brand == "" {
		c.Brand = d.Name
	}
	if p.NominalML > 0 {
		c.NominalML = p.NominalML
	}
	if t.FrontOfPack && p.Place == onpack.UK {
		c.FrontOfPack, c.FrontPortion = FrontOf(l)
	}
	c.settle()
	return c, food
}

// settle has the element of nutrition say what stands on a package too small for a
// panel.
func (c *Content) settle() {
	if !c.mayAsk() {
		return
	}
	faces, err := Faces(*c)
	if err != nil {
		return
	}
	for _, f := range faces {
		for _, b := range f.Boxes {
			for i := range c.Elements {
				if e := &c.Elements[i]; e.Key == onpack.Nutrition && b.Form == TooSmall {
					e.Text, e.Told, e.Section, e.Class = c.AskFor(), nil, b.Rule, onpack.FromMemory
				}
			}
		}
	}
}

// OfBatch fills in what is not typed from a batch of the notebook: the day it was
// made, its lot, and for how long it keeps, where it says until when.
func (t Choices) OfBatch(b batch.Batch) Choices {
	if t.Lot == "" {
		if t.Lot = b.Lot; t.Lot == "" {
			t.Lot = b.ID
		}
	}
	if t.Made != "" {
		return t
	}
	t.Made = b.Made
	made, err := time.Parse(time.DateOnly, b.Made)
	last, lastErr := time.Parse(time.DateOnly, b.BestBefore)
	if t.Keeps == "" && err == nil && lastErr == nil && last.After(made) {
		t.Keeps = onpack.Durability{Days: int(last.Sub(made).Hours() / 24)}.String()
	}
	return t
}

// Numbered returns n copies of a label; where a lot stands on them, each has a
// number behind it.
func Numbered(c Content, food onpack.Food, p onpack.Pack, words onpack.Words, n int) []Content {
	lot := slices.ContainsFunc(c.Elements, func(e onpack.Element) bool { return e.Key == onpack.Lot && e.State == onpack.Filled })
	copies := make([]Content, n)
	for i := range copies {
		copies[i] = c
	}
	if !lot || n == 1 {
		return copies
	}
	if p.Lot == "" {
		p.Lot = onpack.LotOf(p.Made)
	}
	for i := range copies {
		q := p
		q.Lot = fmt.Sprintf("%s-%d", p.Lot, i+1)
		copies[i].Elements = onpack.Elements(food, q, words)
	}
	return copies
}
