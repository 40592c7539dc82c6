// Package cutting draws cuts of a stirred tub while hands go on.
package cutting

import (
	"context"
	"errors"
	"image"
	"reflect"
	"slices"
	"strings"
	"time"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// A Job is what a Cutter is asked for: cuts drawn together, coarse as long as
// requests come, then as the screen needs them, then sharp.
type Job struct {
	Cuts   []ripple.Settings
	Style  ripple.Style
	Coarse int           // pixels along the longer side, at least
	Sharp  int           // the same, of the first cut, which Study measures; of others at most
	Fit    []image.Point // pixels on the screen, to bring pictures to; nil leaves them
	// Study, if not nil, is given the sharp raster of the first cut, away from the window's
	// thread. What it returns runs on that thread with the pictures.
	Study func(*ripple.Raster) func()
}

// Drawn is a Cutter's answer: a picture for each cut, or what is wrong.
type Drawn struct {
	Pictures []*image.RGBA
	Sharp    bool
	Err      error
}

// Cutter draws cuts away from the window's thread, the newest request only. Its
// methods are called on that thread, as show and progress are.
type Cutter struct {
	post     func(func())
	show     func(Drawn)
	progress func(done float64)

	work newest.Work
	last int // counts requests, so that an answer knows whether it is the newest's

	// pace is what a pixel of the last coarse pictures took, in seconds.
	pace float64

	kept kept // by the one at work

	// ready is what kept's fields serve, as the window's thread knows it.
	ready stirring
}

// kept is what a change of colour does not change, and the fields, which a change of
// the ratio does not either.
type kept struct {
	of     stirring
	fields []*ripple.Origins
	foam   []float64 // of the pictures
}

// stirring is all of a request that fields depend on: the cuts but for their foam.
type stirring struct {
	cuts []ripple.Settings
	px   []int
}

func (q Job) stirring() stirring {
	var s stirring
	for i, c := range q.Cuts {
		c.FoamFraction = 0
		s.cuts, s.px = append(s.cuts, c), append(s.px, q.sharpPixels(i))
	}
	return s
}

func (q Job) foam() []float64 {
	var foam []float64
	for _, c := range q.Cuts {
		foam = append(foam, c.FoamFraction)
	}
	return foam
}

// Follows reports whether q differs from what is drawn in the ratio or the colours
// alone, so that its pictures cost next to nothing and are sharp at once.
func (c *Cutter) Follows(q Job) bool { return reflect.DeepEqual(c.ready, q.stirring()) }

// NewCutter returns a Cutter that answers to show. progress, if not nil, is told
// the share done of sharp pictures, in no strict order. post runs a function on
// the window's thread.
func NewCutter(post func(func()), show func(Drawn), progress func(done float64)) *Cutter {
	if progress == nil {
		progress = func(float64) {}
	}
	return &Cutter{post: post, show: show, progress: progress}
}

// Draw asks for q instead of whatever was asked for before.
func (c *Cutter) Draw(q Job) {
	c.last++
	// tell runs f on the window's thread unless q is no longer wanted by then.
	mine := c.last
	tell := func(f func()) {
		c.post(func() {
			if c.last == mine {
				f()
			}
		})
	}
	c.work.Ask(func(ctx context.Context) {
		if err := mishap.Try(func() { c.draw(ctx, q, tell) }); err != nil {
			tell(func() { c.show(Drawn{Err: err}) })
		}
	})
}

// Stop gives up what has been asked for; the coarse pictures may still come.
func (c *Cutter) Stop() {
	c.last++
	c.work.Stop()
}

// Forget stops, and drops what is kept to draw the next pictures soon: nobody looks.
func (c *Cutter) Forget() {
	c.Stop()
	c.ready = stirring{}
	c.work.Ask(func(context.Context) { c.kept = kept{} })
}

func (c *Cutter) draw(ctx context.Context, q Job, tell func(func())) {
	var rasters []*ripple.Raster
	var err error
	switch {
	case !reflect.DeepEqual(c.kept.of, q.stirring()):
		err = c.sample(ctx, q, tell)
	case !slices.Equal(c.kept.foam, q.foam()):
		rasters, err = c.cut(ctx, q)
	}
	if err == nil && rasters == nil {
		rasters, err = c.kept.level(q)
	}
	if err != nil {
		tell(func() { c.show(Drawn{Err: err}) })
		return
	}
	d := Drawn{Sharp: true}
	for i, r := range rasters {
		if ctx.Err() != nil {
			return
		}
		d.Pictures = append(d.Pictures, q.fit(r.Paint(q.Style), i))
		done := sampling + (1-sampling)*float64(i+1)/float64(len(q.Cuts))
		tell(func() { c.progress(done) })
	}
	then := func() {}
	if q.Study != nil {
		then = q.Study(rasters[0])
	}
	tell(func() { c.show(d); then() })
}

// sampling is the share of the work that is not painting.
const sampling = 0.6

// sample shows the coarse pictures, waits for requests to rest, shows what the
// screen can, and keeps the fields of the sharp ones.
func (c *Cutter) sample(ctx context.Context, q Job, tell func(func())) error {
	plain := q.Style
	plain.Plain = true
	var cuts []*ripple.Cut
	coarse, screen := Drawn{}, Drawn{}
	px, begun := c.coarsePixels(q), time.Now()
	for i, s := range q.Cuts {
		cut, err := ripple.Stir(s)
		if err != nil {
			return err
		}
		// The coarse pictures are always finished: a drag must show something.
		im, err := cut.Render(context.Background(), px, plain, nil)
		if err != nil {
			return err
		}
		cuts, coarse.Pictures = append(cuts, cut), append(coarse.Pictures, q.fit(im, i))
	}
	c.pace = time.Since(begun).Seconds() / float64(px*px*len(cuts))
	c.post(func() { c.show(coarse) })
	if !newest.Rest(ctx) {
		return ctx.Err()
	}
	for i, cut := range cuts {
		if px := q.screenPixels(i); px < q.sharpPixels(i)*2/3 {
			im, err := cut.Render(ctx, px, q.Style, nil)
			if err != nil {
				return err
			}
			screen.Pictures = append(screen.Pictures, q.fit(im, i))
		}
	}
	if len(screen.Pictures) == len(cuts) {
		tell(func() { c.show(screen) })
	}
	k := kept{of: q.stirring()}
	for i, cut := range cuts {
		f, err := cut.Origins(ctx, k.of.px[i], func(done float64) {
			done = sampling * (float64(i) + done) / float64(len(cuts))
			tell(func() { c.progress(done) })
		})
		if err != nil {
			return err
		}
		k.fields = append(k.fields, f)
	}
	c.kept = k
	c.post(func() { c.ready = k.of })
	return nil
}

// level cuts the fields at q's ratio.
func (k *kept) level(q Job) (rasters []*ripple.Raster, err error) {
	foam := q.foam()
	for i, f := range k.fields {
		r, err := f.Raster(foam[i])
		if err != nil {
			return nil, err
		}
		rasters = append(rasters, r)
	}
	k.foam = foam
	return rasters, nil
}

// cut shows plain pictures of another ratio, sharp at once, and waits for requests to
// rest.
func (c *Cutter) cut(ctx context.Context, q Job) ([]*ripple.Raster, error) {
	rasters, err := c.kept.level(q)
	if err != nil {
		return nil, err
	}
	plain := q.Style
	plain.Plain = true
	d := Drawn{}
	for i, r := range rasters {
		d.Pictures = append(d.Pictures, q.fit(r.Paint(plain), i))
	}
	c.post(func() { c.show(d) })
	if !newest.Rest(ctx) {
		return nil, ctx.Err()
	}
	return rasters, nil
}

// Of returns how the tub of d, evaluated as r, is cut. The error says in words
// for the maker why there is nothing to draw.
func Of(d design.Design, r *model.Result, view ripple.View) (ripple.Settings, error) {
	if wrong := design.Validate(d); len(wrong) > 0 {
		return ripple.Settings{}, flaw.New("the design is not valid: %s", wrong[0])
	}
	s := tub.RippleOf(d, r.Blend.FoamVolumeFraction, view)
	if err := s.Validate(); err != nil {
		var f *ripple.FieldError
		if errors.As(err, &f) && strings.HasPrefix(f.Field, "Tub.") {
			return s, &SizeError{s.Tub}
		}
		return s, err
	}
	return s, nil
}

// Busy reports whether something is being drawn or waits.
func (c *Cutter) Busy() bool { return c.work.Busy() }

// SizeError says that a tub's filling is too small, too large or too flat to be
// drawn; say.NoCut words it in the maker's units.
type SizeError struct{ Tub ripple.Tub }

func (e *SizeError) Error() string { return say.NoCut(say.Usual, e.Tub) }
