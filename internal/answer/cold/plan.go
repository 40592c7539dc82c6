package cold

import (
	"context"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
)

// Options adjusts Plan. The zero Options does everything.
type Options struct {
	// Progress, if set, is called on Plan's goroutine with the part done, 0
	// to 1, which never falls.
	Progress   func(done float64)
	NoPictures bool // leave Run.Frames out, but for those of the hardening tub, whose ice they tell
	// OnlyFreezing leaves out the counter, the refrigerator, the notes and the
	// bands of the times: what the ice of one change asks for.
	OnlyFreezing bool
	FillC        *float64 // °C, −30 to 40, of the tub as it goes into the freezer; nil: as swirled
}

// Plan computes the cold of d, whose evaluation is r, in the kitchen p. It
// takes some tens of milliseconds; a cancelled context ends it early with
// ctx.Err(). A kitchen that does not validate gives its *FieldError.
//
// Where batches have shown what the recipe comes to (Result.Made), the bands of the times
// hold those of the tub as it comes out, too, which costs as much again.
func Plan(ctx context.Context, d design.Design, r *model.Result, p Profile, o Options) (Answer, error) {
	made := r.Made()
	if made == nil || o.OnlyFreezing {
		return plan(ctx, d, r, p, o)
	}
	second := Options{NoPictures: true, FillC: o.FillC}
	if all := o.Progress; all != nil {
		o.Progress = func(done float64) { all(done / 2) }
		second.Progress = func(done float64) { all((1 + done) / 2) }
	}
	a, err := plan(ctx, d, r, p, o)
	if err != nil {
		return a, err
	}
	came, err := plan(ctx, d, made, p, second)
	if err != nil {
		return Answer{}, err
	}
	others := came.ranges()
	for i, x := range a.ranges() {
		x.hold(*others[i])
	}
	return a, nil
}

// plan is Plan of one result as it stands.
func plan(ctx context.Context, d design.Design, r *model.Result, p Profile, o Options) (Answer, error) {
	if err := p.Validate(); err != nil {
		return Answer{}, err
	}
	s, err := rippled(r)
	if err != nil {
		return Answer{}, err
	}
	if f := o.FillC; f != nil {
		if wrong := setting.Outside(*f, -30, 40, "°C"); wrong != nil {
			return Answer{}, &FieldError{Profile: p.Name, Path: "fill_c", Err: wrong}
		}
	}
	a := Answer{Profile: p, Tub: tubVessel(d.Tubs)}
	pl := planner{runner{ctx: ctx, progress: o.Progress, pictures: !o.NoPictures, alone: o.OnlyFreezing, total: 15}, d, r, p, s, &a, o}
	parts := []func() error{pl.stillFreeze, pl.harden, pl.serve}
	if o.OnlyFreezing {
		parts = parts[:2]
	}
	for _, part := range parts {
		if err := part(); err != nil {
			return Answer{}, flaw.New("the cold: %v", err)
		}
	}
	pl.store()
	if !o.OnlyFreezing {
		pl.remark()
	}
	pl.done = pl.total
	pl.report(0)
	return a, nil
}

// planner holds what the parts of a plan share.
type planner struct {
	runner
	d   design.Design
	r   *model.Result
	p   Profile
	tub substance
	a   *Answer
	o   Options
}

// The meshes. A hardening tub is asked for its core, which so many even cells hold
// best; one on the counter for its outer ring and its wall, which heat.Tub does.
// The stirred dishes are checked on theirs.
const (
	hardenCells = 450
	counterMesh = 0 // heat.Tub's
	dishCells   = 192
)
