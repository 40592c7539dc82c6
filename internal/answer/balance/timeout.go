package balance

import (
	"context"
	"slices"

	"ripplewright/internal/answer/cold"
)

// Warmer reports whether a remedy serves warmer, and TimeOut has something to find.
func (f *Remedies) Warmer() bool { return slices.ContainsFunc(f.All(), (*Proposal).warmer) }

// TimeOut finds how long the tub of each remedy that serves warmer stays out of the
// freezer in a kitchen. The error is the context's, or that of cold.Thaw.
func (f *Remedies) TimeOut(ctx context.Context, kitchen cold.Profile) error {
	for _, p := range f.All() {
		if !p.warmer() {
			continue
		}
		out, err := cold.Thaw(ctx, p.Design, &p.Result, kitchen)
		if err != nil {
			return err
		}
		p.Out = &out
	}
	return nil
}

// warmer reports whether the proposal is to be served warmer than its design.
func (p *Proposal) warmer() bool {
	for i := range p.Changes {
		if c := &p.Changes[i]; c.Path == "serving.temperature_c" && c.After > c.Before {
			return true
		}
	}
	return false
}
