// Package rippleview is what the page of the stirred tub shows, without a toolkit:
// which cuts, how they are asked for, what is found in them, and the colours.
package rippleview

import (
	"errors"
	"image"
	"math"
	"reflect"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/desk/cutting"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// Views are the choices of what is shown, the usual one last.
var Views = []struct {
	Name  say.Message
	Views []ripple.View
}{
	{say.SideCut, []ripple.View{ripple.Side}},
	{say.FromAbove, []ripple.View{ripple.Top}},
	{say.BothCuts, []ripple.View{ripple.Side, ripple.Top}},
}

// ViewsNamed returns the views of a choice, those of the first where none has that
// name.
func ViewsNamed(name string) []ripple.View {
	for _, v := range Views {
		if v.Name.String() == name {
			return v.Views
		}
	}
	return Views[0].Views
}

// CutShown is the cut face of a tub, without its picture. Lengths are mm.
type CutShown struct {
	Title             string
	WidthMM, HeightMM float64
	CornerMM          float64
	Open              bool    // seen from the side: no wall on top
	HeadMM            float64 // how far the walls stand above the food, if Open
}

// Faces returns what is shown of d, evaluated as r. The error says why there is
// nothing to draw.
func Faces(s say.Style, d design.Design, r *model.Result, views []ripple.View) ([]CutShown, error) {
	if r.Blend.VolumeML == 0 {
		return nil, errors.New(say.EmptyTub.String())
	}
	size := tub.Size(d.Tubs)
	var faces []CutShown
	for _, v := range views {
		if _, err := cutting.Of(d, r, v); err != nil {
			return nil, err
		}
		f := CutShown{WidthMM: size.LengthMM, HeightMM: size.BreadthMM, CornerMM: size.CornerMM}
		if v == ripple.Side {
			f = CutShown{WidthMM: size.LengthMM, HeightMM: size.FillMM, HeadMM: size.HeightMM - size.FillMM, Open: true}
		}
		f.Title = say.CutTitle(s, v, f.WidthMM, f.HeightMM)
		faces = append(faces, f)
	}
	return faces, nil
}

// Reason is why there is no picture, in the maker's units.
func Reason(s say.Style, why error) string {
	var size *cutting.SizeError
	if errors.As(why, &size) {
		return say.NoCut(s, size.Tub)
	}
	return say.Flaw(why)
}

// Request is all that the pictures and the figures come from. The zero Request asks
// for nothing.
type Request struct {
	Job     cutting.Job // but for Study
	sweet   ripple.Pair
	serving serving
}

// serving is how the phases are when the dessert is eaten.
type serving struct {
	celsius  float64
	hardness ripple.Hardness
}

// coarsePixels are those of a coarse picture along its longer side, the least, for
// all cuts together.
const coarsePixels = 220

// Ask returns the request for views of d, evaluated as r, that take fit pixels on
// the screen, the sharp ones sharp pixels at least; ok is false where a cut cannot be
// drawn.
func Ask(d design.Design, r *model.Result, views []ripple.View, fit []image.Point, sharp int) (q Request, ok bool) {
	q = Request{sweet: report.SweetnessOf(r), serving: serving{d.Serving.TemperatureC, report.HardnessOf(r)}}
	q.Job = cutting.Job{Style: tub.Style(d), Fit: fit, Sharp: sharp}
	for _, v := range views {
		s, err := cutting.Of(d, r, v)
		if err != nil {
			return Request{}, false
		}
		q.Job.Cuts = append(q.Job.Cuts, s)
	}
	for _, size := range fit {
		q.Job.Sharp = min(max(q.Job.Sharp, size.X, size.Y), ripple.MaxPixels)
	}
	q.Job.Coarse = coarsePixels / max(1, len(q.Job.Cuts))
	return q, true
}

// Same reports whether both ask for the same.
func (q Request) Same(other Request) bool { return reflect.DeepEqual(q, other) }

// GramsKept says that the picture does not follow the foam share asked for, "" where
// it does.
func GramsKept(s say.Style, d design.Design, r *model.Result) string {
	share := 100 * r.Blend.FoamVolumeFraction
	if d.Batch.Basis != design.BasisAsWritten || math.Abs(share-d.Blend.FoamVolumePercent) <= 0.5 {
		return ""
	}
	return say.AsWrittenFoam(s, share)
}
