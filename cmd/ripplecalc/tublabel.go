package main

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/sticker"
	"ripplewright/internal/work/batch"
)

// tubFlags are those flags of label that are about the whole label of a tub.
type tubFlags struct {
	sticker.Choices
	batch string // a batch of the notebook, or lastBatch
}

// lastBatch stands for the batch that was written down last.
const lastBatch = "last"

func (t *tubFlags) on(f *pflag.FlagSet) {
	for name, to := range map[string]*string{
		"place": &t.Place, "sale": &t.Sale, "lang": &t.Languages, "made": &t.Made, "keeps": &t.Keeps, "date": &t.Date, "maker": &t.Maker, "contact": &t.Contact,
		"lot": &t.Lot, "storage": &t.Storage, "brand": &t.Brand, "tub": &t.Tub, "tub-mm": &t.TubMM, "net": &t.NetML, "sheet": &t.Sheet,
		"margin": &t.Margin, "article": &t.Article, "gap": &t.Gap, "first": &t.First, "copies": &t.Copies, "batch": &t.batch,
	} {
		f.StringVar(to, name, "", "")
	}
	f.BoolVar(&t.Lid, "lid", false, "")
	f.BoolVar(&t.Exempt, "exempt", false, "")
	f.BoolVar(&t.Grams, "grams", false, "")
	f.BoolVar(&t.FrontOfPack, "front-of-pack", false, "")
}

// where returns the place of sale, and whether the whole label of a tub is asked
// for rather than the panel alone. The place decides the region.
func (t *tubFlags) where(c *command, flags *pflag.FlagSet, region *string) (place onpack.Place, whole bool, err error) {
	given := map[string]bool{}
	flags.Visit(func(f *pflag.Flag) { given[f.Name] = true })
	if t.Place == "" {
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
	if place, err = onpack.ParsePlace(t.Place); err != nil {
		return "", false, c.misused("--place %s: %v", echo.Quoted(t.Place), err)
	}
	if given["region"] && *region != string(place.Region()) {
		return "", false, c.misused("--place %s has the rules of --region %s", place, place.Region())
	}
	*region = string(place.Region())
	return place, true, nil
}

// tubFlagNames are the flags that make sense only with --place.
var tubFlagNames = []string{"sale", "lang", "made", "keeps", "date", "maker", "contact", "lot", "storage", "brand", "tub", "tub-mm", "sheet", "net", "margin",
	"gap", "grams", "exempt", "lid", "article", "front-of-pack", "copies", "first", "batch"}

// ofBatch fills in what the notebook beside a design says of the batch asked for.
func (t *tubFlags) ofBatch(c *command, file string) error {
	if t.batch == "" {
		return nil
	}
	notes, err := batch.Load(batch.PathOf(file))
	if err != nil {
		return err
	}
	b, known := notes.Find(t.batch)
	if n := len(notes.Batches); t.batch == lastBatch && n > 0 {
		b, known = notes.Batches[n-1], true
	}
	if !known {
		return c.misused("--batch %s: %s has no such batch", echo.Quoted(t.batch), batch.PathOf(file))
	}
	t.Choices = t.OfBatch(b)
	return nil
}

// misread says which flag cannot be read.
func misread(c *command, err error) error {
	var bad *onpack.ChoiceError
	if errors.As(err, &bad) {
		return c.misused("--%s %s: %v", bad.Field, echo.Quoted(bad.Typed), bad.Err)
	}
	return err
}

// mostToAdd is how many letters of what must be added are told.
const mostToAdd = 400

// write draws the labels into a file; one that lacks an element is refused.
func (t *tubFlags) write(c *command, path string, content sticker.Content, food onpack.Food, p onpack.Pack, words onpack.Words, title string) error {
	if missing := onpack.Missing(content.Elements); len(missing) > 0 {
		var all []string
		for _, e := range missing {
			all = append(all, say.LabelDue(e, mostToAdd))
		}
		return flaw.New("the label lacks what is due:\n  %s", strings.Join(all, "\n  "))
	}
	o, err := t.Print()
	if err != nil {
		return misread(c, err)
	}
	pages, err := sticker.Draw(sticker.Numbered(content, food, p, words, o.Copies), o)
	if err != nil {
		return err
	}
	return card.WritePages(path, title, pages)
}

// answer is what is printed of it.
func (t *tubFlags) answer(l report.Label, content sticker.Content, p onpack.Pack, food onpack.Food) report.TubLabel {
	out := report.TubLabel{Label: l, Place: p.Place, Sale: p.Sale, Languages: p.Languages, Elements: content.Elements, FrozenML: food.HoldsML, Fill: onpack.FillOf(food, p)}
	faces, err := sticker.Faces(content)
	for _, f := range faces {
		out.Faces = append(out.Faces, report.TubFace{Name: f.Name, WidthMM: f.WidthMM, HeightMM: f.HeightMM, LeastLetterMM: f.LeastMM, Fits: f.Fits(), Why: f.Why})
	}
	_ = err // each face says why it does not fit
	for _, lang := range p.Languages {
		if lacks := content.Words.Lacking(lang, food.Allergens, onpack.AllergensAlone(content.Elements)); len(lacks) > 0 && p.Place != onpack.US {
			if out.Lacking == nil {
				out.Lacking = map[string][]string{}
			}
			out.Lacking[lang] = lacks
		}
	}
	return out
}

// asksDate reports whether a date stands on the label, or must.
func asksDate(all []onpack.Element) bool {
	return slices.ContainsFunc(all, func(e onpack.Element) bool { return e.Key == onpack.Date && e.State != onpack.NotNeeded })
}
