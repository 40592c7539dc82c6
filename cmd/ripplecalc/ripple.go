package main

import (
	"context"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
	"ripplewright/internal/work/designfile"
)

var rippleCommand = &command{
	name:  "ripple",
	usage: "ripple FILE [-o cut.png|cut.svg] [--view side|top] [--size PX] [--json]",
	short: "Draws the cut of the stirred tub and measures its ribbons",
	long: `
  -o FILE   the picture, by its ending: .png, or .svg at true size; without it
            only the figures are shown
  --view    side (an upright cut, the usual) or top (seen from above)
  --size    pixels along the longer side, 16 to 1600; 900 if not given
  --json    figures as JSON: foam_area_percent, mean_ribbon_mm (of the foam:
            twice its area over the length of the interface), p90_ribbon_mm
            (nine in ten of the foam's chords are shorter), interface_mm, spoon
            (the word for the mean), and more of both phases and of spoonfuls;
            as_you_stir: the mean ribbon by photographed cuts ("ripplecalc help
            photo"), null without any

For pictures under 300 pixels the figures are measured at 600.
`,
	least: 1,
	most:  1,
	flags: rippleFlags,
	words: map[string]func() []string{"view": one("side", "top")},
}

// What figures are measured at where the picture is too coarse for them.
const (
	coarsePixels  = 300
	measurePixels = 600
)

func rippleFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	to := flags.StringP("output", "o", "", "")
	view := flags.String("view", ripple.Side.String(), "")
	px := flags.Int("size", 900, "")
	return func(s *shell, files []string) error {
		side, ok := ripple.ParseView(*view)
		switch {
		case !ok:
			return c.misused("--view %s is not one of side, top", echo.Quoted(*view))
		case *px < ripple.MinPixels || *px > ripple.MaxPixels:
			return c.misused("--size %d is outside %d to %d", *px, ripple.MinPixels, ripple.MaxPixels)
		case *to != "" && !hasEnding(*to, ".png", ".svg"):
			return c.misused("-o %s: a picture is written as .png or .svg", echo.Plain(*to))
		}
		if err := c.mayWrite(*to, files[0]); err != nil {
			return err
		}
		f, r, err := open(s, files[0])
		if err != nil {
			return err
		}
		_, taught, err := notebookOf(f, files[0])
		if err != nil {
			return err
		}
		answer, err := draw(f, r, side, *px, *to)
		if err != nil {
			return flaw.New("%s: %v", f.Name, err)
		}
		return s.answer(answer.Stirred(&taught), *asJSON)
	}
}

// draw stirs the tub of f, writes its picture to a file if it has a name, and
// measures it.
func draw(f *designfile.File, r *model.Result, view ripple.View, px int, to string) (report.Ripple, error) {
	cut, err := ripple.Stir(tub.RippleOf(f.Design, r.Blend.FoamVolumeFraction, view))
	if err != nil {
		return report.Ripple{}, err
	}
	raster, err := cut.Raster(context.Background(), px, nil)
	if err != nil {
		return report.Ripple{}, err
	}
	if to != "" {
		wide, high := cut.SizeMM()
		picture := card.CutPicture{Image: raster.Paint(tub.Style(f.Design)), WidthMM: wide, HeightMM: high}
		if err := card.WriteCuts(to, []card.CutPicture{picture}); err != nil {
			return report.Ripple{}, err
		}
	}
	if px < coarsePixels {
		if raster, err = cut.Raster(context.Background(), measurePixels, nil); err != nil {
			return report.Ripple{}, err
		}
	}
	return report.RippleOf(f.Name, f.Design.Name, r, cut, raster), nil
}
