package main

import (
	"bytes"
	"context"
	"errors"
	"image/png"
	"runtime/debug"
	"strings"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/photo"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
)

// photoMemory is from how many bytes on the collector works harder: what is left over of
// decoding and straightening a picture would be as much again.
const photoMemory = 160 << 20

var photoCommand = &command{
	name:  "photo",
	usage: "photo FILE PICTURE --outline PLACES --custard X,Y --foam X,Y [--view side|top] [--width-mm MM] [--height-mm MM] [--keep BATCH] [-o mask.png] [--json]",
	short: "Measures the ribbons of a photographed cut, beside the computed one",
	long: `
Cut the tub, lay it down, take its picture straight from before it in even light, as
JPEG or PNG. Places are in pixels from the upper left of the picture as it stands
upright.

  --outline  the four corners of the cut from the upper left on, clockwise:
             "120,80 900,95 880,640 130,620". Of a round tub seen from above, four
             places on its rim, a quarter turn apart, from the top on
  --custard  a place in the middle of a thick ribbon of custard, "310,200"
  --foam     the same of foam
  --view     side (an upright cut, the usual) or top (seen from above)
  --width-mm   the cut's width, where the tub is not as the design has it
  --height-mm  its height, likewise
  --keep BATCH writes what was read down in the notebook, in the batch of that name
  -o FILE    the picture with the mask over it, .png: what was taken for foam is tinted
  --json     foam_area_percent, mean_ribbon_mm, thickest_tenth_chord_mm and
             dense_mean_ribbon_mm (each value, low, high), thickness_refused (code,
             sentence), least_ribbon_mm, pixel_mm, edge_mm, computed,
             computed_of_any_thickness, batch, notebook

The ribbons are measured along the same lines as those of the computed cut. What is
thinner than three pixels cannot be seen, and is left out of both.
`,
	least: 2,
	most:  2,
	flags: photoFlags,
	words: map[string]func() []string{"view": one("side", "top")},
	after: []string{"jpg", "jpeg", "png"},
}

// photoAsked is what the flags of photo say.
type photoAsked struct {
	outline, custard, foam, view, keep, to string
	widthMM, heightMM                      float64
	json                                   bool
}

func photoFlags(c *command, flags *pflag.FlagSet) action {
	var a photoAsked
	flags.StringVar(&a.outline, "outline", "", "")
	flags.StringVar(&a.custard, "custard", "", "")
	flags.StringVar(&a.foam, "foam", "", "")
	flags.StringVar(&a.view, "view", ripple.Side.String(), "")
	flags.StringVar(&a.keep, "keep", "", "")
	flags.StringVarP(&a.to, "output", "o", "", "")
	flags.Float64Var(&a.widthMM, "width-mm", 0, "")
	flags.Float64Var(&a.heightMM, "height-mm", 0, "")
	flags.BoolVar(&a.json, "json", false, "")
	return func(s *shell, files []string) error { return c.photo(s, files[0], files[1], &a) }
}

// request reads what the flags say of a picture; its tub is the design's.
func (c *command) request(a *photoAsked) (q photo.Request, err error) {
	view, ok := ripple.ParseView(a.view)
	if q.View = view; !ok {
		return q, c.misused("--view %s is not one of side, top", echo.Quoted(a.view))
	}
	if a.to != "" && !hasEnding(a.to, ".png") {
		return q, c.misused("-o %s: the mask is written as .png", echo.Plain(a.to))
	}
	if a.outline == "" {
		return q, c.misused("no --outline given: the four corners of the cut in the picture")
	}
	if q.Outline, err = photo.ParseOutline(a.outline); err != nil {
		return q, c.misused("--outline: %v", err)
	}
	for _, x := range []struct {
		flag, text string
		to         *photo.Point
	}{{"custard", a.custard, &q.Dense}, {"foam", a.foam, &q.Foam}} {
		if x.text == "" {
			return q, c.misused("no --%s given: a place in the picture that shows it", x.flag)
		}
		if *x.to, err = photo.ParsePoint(x.text); err != nil {
			return q, c.misused("--%s: %v", x.flag, err)
		}
	}
	for _, x := range []struct {
		flag string
		mm   float64
	}{{"width-mm", a.widthMM}, {"height-mm", a.heightMM}} {
		if x.mm != 0 && !(x.mm >= ripple.MinFillMM && x.mm <= ripple.MaxSizeMM) {
			return q, c.misused("--%s %g is outside %d to %d", x.flag, x.mm, ripple.MinFillMM, ripple.MaxSizeMM)
		}
	}
	return q, nil
}

func (c *command) photo(s *shell, name, picture string, a *photoAsked) error {
	q, err := c.request(a)
	if err != nil {
		return err
	}
	if name == "-" && a.keep != "" {
		return c.misused("a batch is written down beside a file, not beside standard input")
	}
	if err := c.mayWrite(a.to, name, picture); err != nil {
		return err
	}
	bench, f, r, err := openWith(s, name)
	if err != nil {
		return err
	}
	settings := stirredAs(f, r, &q, a)
	ctx := context.Background()
	out := report.Photo{File: f.Name, Name: f.Design.Name, Picture: say.HarmlessLine(picture), View: q.View}
	debug.SetMemoryLimit(photoMemory)
	if q.Picture, err = photo.Open(ctx, picture); err == nil {
		out.Reading, err = photo.Read(ctx, q)
	}
	var refused *photo.Refusal
	if errors.As(err, &refused) {
		return flaw.New("%s: %s", echo.Plain(picture), say.PhotoRefused(report.Reads, refused))
	} else if err != nil {
		return err
	}
	cuts, err := tub.Cut(ctx, settings, 0, out.Reading.PassedOverMM())
	if err != nil {
		return flaw.New("%s: %v", f.Name, err)
	}
	out.Whole, out.Computed = cuts[0], cuts[1]
	if a.to != "" {
		if err := writeMask(a.to, &q, out.Reading); err != nil {
			return err
		}
	}
	if a.keep != "" {
		kept, err := c.keepPhoto(s, bench, f, name, picture, a, out.Reading)
		if err != nil {
			return err
		}
		out.Batch, out.Notebook = kept.Logged.Entry.ID, kept.File
	}
	return s.answer(out, a.json)
}

// stirredAs returns how the tub of f is cut, in the millimetres that were asked for, which
// the picture's cut has too.
func stirredAs(f *designfile.File, r *model.Result, q *photo.Request, a *photoAsked) ripple.Settings {
	s := tub.RippleOf(f.Design, r.Blend.FoamVolumeFraction, q.View)
	s.Tub = s.Tub.Sized(q.View, a.widthMM, a.heightMM)
	q.Tub = s.Tub
	return s
}

// maskPixels are at most along a mask's longer side.
const maskPixels = 1600

func writeMask(to string, q *photo.Request, r *photo.Reading) error {
	small, per := photo.Small(q.Picture, maskPixels)
	var b bytes.Buffer
	if err := png.Encode(&b, r.Mask.Over(small, per)); err != nil {
		return fault(err)
	}
	return atomicfile.Write(to, b.Bytes())
}

// keepPhoto writes what was read down in a batch.
func (c *command) keepPhoto(s *shell, bench *bench, f *designfile.File, name, picture string, a *photoAsked, r *photo.Reading) (report.Added, error) {
	id, ok := batch.EntryAt("batch")
	var b batch.Batch
	if wrong := id.Set(&b, a.keep); !ok || wrong != nil {
		return report.Added{}, c.misused("--keep: %v", wrong)
	}
	n, err := batch.Load(batch.PathOf(name))
	if err != nil {
		return report.Added{}, err
	}
	was, _ := n.Find(b.ID)
	b.Cut, b.Photographs = learn.CutOf(a.view, r), was.Photographs
	if !strings.Contains(picture, ";") && len(picture) <= batch.MaxItem && len(was.Photographs) < batch.MaxListed {
		b.Photographs = append(b.Photographs, picture)
	}
	if path, wrong := b.Problem(); wrong != nil {
		return report.Added{}, c.misused("--keep: %s: %v", path, wrong)
	}
	return writeBatch(s, bench, f, name, b)
}
