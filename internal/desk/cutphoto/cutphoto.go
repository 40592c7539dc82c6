// Package cutphoto is what the window asks of a photograph of a cut: to open it, and to
// measure it beside the computed cut. Both run away from the window's thread.
package cutphoto

import (
	"context"
	"errors"
	"image"
	"runtime/debug"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/photo"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// Opened is a picture that was read, and a small one for the screen.
type Opened struct {
	Path        string
	Picture     image.Image
	Small       *image.RGBA
	PerFraction float64 // pixels of Small to one of Picture
}

// smallPixels are along the longer side of a picture for the screen.
const smallPixels = 1000

// Open reads the picture of a file. See Worded for its error.
func Open(ctx context.Context, path string) (Opened, error) {
	im, err := photo.Open(ctx, path)
	if err != nil {
		return Opened{}, err
	}
	small, per := photo.Small(im, smallPixels)
	// The file and what its decoder has left behind, up to some 80 MB, are given back before
	// measuring asks for as much again.
	debug.FreeOSMemory()
	return Opened{path, im, small, per}, nil
}

// Places are where a maker marks a picture, in the order of Marks' names: four of the
// outline, a spot of custard, a spot of foam. They are pixels of Small.
type Places [6]photo.Point

// First returns where the marks stand before a hand has moved them.
func (o *Opened) First() Places {
	w, h := float64(o.Small.Rect.Dx()), float64(o.Small.Rect.Dy())
	at := func(x, y float64) photo.Point { return photo.Point{X: x * w, Y: y * h} }
	return Places{at(.12, .12), at(.88, .12), at(.88, .88), at(.12, .88), at(.4, .5), at(.6, .5)}
}

// Part returns what a screen of size pixels shows of the picture from at on, in pixels of
// Small, each of which is drawn zoomFactor times as large: as fine as the picture is.
func (o *Opened) Part(at photo.Point, size image.Point, zoomFactor float64) *image.RGBA {
	return photo.Part(o.Picture, photo.Point{X: at.X / o.PerFraction, Y: at.Y / o.PerFraction}, size, zoomFactor*o.PerFraction)
}

// Ask is a picture to be measured.
type Ask struct {
	Opened
	Places            Places
	Design            design.Design
	FoamFraction      float64 // of the tub, as evaluated
	View              ripple.View
	WidthMM, HeightMM float64 // of the cut
}

// NewAsk returns what asks for a picture of d, evaluated as r, in the millimetres of the
// design's own tub.
func NewAsk(d design.Design, r *model.Result, view ripple.View) Ask {
	a := Ask{Design: d, FoamFraction: r.Blend.FoamVolumeFraction, View: view}
	a.WidthMM, a.HeightMM = tub.Ripple(d).Tub.BoxMM(view)
	return a
}

// Rim reports whether the outline is four places on a rim.
func (a *Ask) Rim() bool { return photo.Rim(tub.Ripple(a.Design).Tub, a.View) }

// settings is how the tub is stirred, in the cut's own millimetres.
func (a *Ask) settings() ripple.Settings {
	s := tub.RippleOf(a.Design, a.FoamFraction, a.View)
	s.Tub = s.Tub.Sized(a.View, a.WidthMM, a.HeightMM)
	return s
}

// Answer is what a picture shows beside the computed cut.
type Answer struct {
	Reading  *photo.Reading
	Over     *image.RGBA // the small picture with the mask over it
	Computed ripple.Measure
	Whole    ripple.Measure // the computed cut's with ribbons of any thickness
	Drawn    image.Image    // the computed cut
	Settings ripple.Settings
}

// cutPixels are along the longer side of the computed cut's picture.
const cutPixels = 500

// Read measures a picture. See Worded for its error.
func Read(ctx context.Context, a Ask) (*Answer, error) {
	s := a.settings()
	q := photo.Request{Picture: a.Picture, Tub: s.Tub, View: a.View}
	for i, p := range a.Places {
		p = photo.Point{X: p.X / a.PerFraction, Y: p.Y / a.PerFraction}
		switch i {
		case custard:
			q.Dense = p
		case foam:
			q.Foam = p
		default:
			q.Outline[i] = p
		}
	}
	out := &Answer{Settings: s}
	cut, err := ripple.Stir(s)
	if err != nil {
		return nil, err
	}
	if out.Reading, err = photo.Read(ctx, q); err != nil {
		return nil, err
	}
	r, err := cut.Raster(ctx, cutPixels, nil)
	if err != nil {
		return nil, err
	}
	out.Computed, out.Whole = r.MeasureOver(out.Reading.PassedOverMM()), r.Measure()
	out.Drawn = r.Paint(tub.Style(a.Design))
	out.Over = out.Reading.Mask.Over(a.Small, a.PerFraction)
	return out, ctx.Err()
}

// The places that are spots.
const custard, foam = 4, 5

// Worded is an error of Open and Read for the maker to read.
func Worded(s say.Style, err error) error {
	var r *photo.Refusal
	if errors.As(err, &r) {
		return errors.New(say.PhotoRefused(s, r))
	}
	return err
}

// Part is Opened's with the mask over it, as Over has it.
func (a *Answer) Part(o *Opened, at photo.Point, size image.Point, zoomFactor float64) *image.RGBA {
	part := o.Part(at, size, zoomFactor)
	a.Reading.Mask.OverPart(part, photo.Point{X: at.X / o.PerFraction, Y: at.Y / o.PerFraction}, zoomFactor*o.PerFraction)
	return part
}

// Cut is what a picture shows, as a batch notes it.
func (a *Answer) Cut(view ripple.View) batch.Cut { return learn.CutOf(view.String(), a.Reading) }

// Rows are the answer's table.
func (a *Answer) Rows(s say.Style) []say.TableRow { return say.PhotoTable(s, a.Reading, &a.Computed) }

// Below says what the table does not show.
func (a *Answer) Below(s say.Style) string {
	if a.Reading.Thin != nil {
		return say.T(say.PhotoNoWidth, say.PhotoRefused(s, a.Reading.Thin)) + " " + say.PhotoOneCut.String()
	}
	return say.PhotoLeast(s, a.Reading.LeastMM, a.Whole.Foam.MeanMM) + " " + say.PhotoOneCut.String()
}
