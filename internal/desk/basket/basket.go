// Package basket keeps what is shopped for together: the open design and others
// out of files, each in so many batches.
package basket

import (
	"math"
	"path/filepath"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/shop"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// Basket is the designs of a shopping list. The zero Basket holds one batch of the
// open design. It belongs to one goroutine.
type Basket struct {
	open   int // batches of the open design beyond the first
	others []Other
}

// Other is a design that is not open, as its file had it when it was added.
type Other struct {
	Path    string
	Design  design.Design
	Batches int
}

// Batches returns how often the open design is made.
func (b *Basket) Batches() int { return b.open + 1 }

// SetBatches has the open design made n times, from 1 up.
func (b *Basket) SetBatches(n int) { b.open = within(n) - 1 }

// Others returns the other designs in the order in which they came. The caller
// must not change it.
func (b *Basket) Others() []Other { return b.others }

// Add puts a batch of the design in the file at path into the basket. On an error,
// which names file, line and key, nothing changes.
func (b *Basket) Add(path string, m *model.Model) error {
	f, err := designfile.LoadWith(path, m.Library())
	if err != nil {
		return err
	}
	if _, err := m.Evaluate(f.Design); err != nil {
		return flaw.New("%s: %v", filepath.Base(path), err)
	}
	b.others = append(b.others, Other{path, f.Design, 1})
	return nil
}

// SetOther has the other design i made n times, from 1 up.
func (b *Basket) SetOther(i, n int) { b.others[i].Batches = within(n) }

// Remove takes the other design i out.
func (b *Basket) Remove(i int) { b.others = append(b.others[:i:i], b.others[i+1:]...) }

func within(n int) int { return min(max(n, 1), shop.MostBatches) }

// List is what to buy for the basket, with the open design d from the file named,
// which comes to r. An other that the library no longer knows is an error.
func (b *Basket) List(m *model.Model, file string, d design.Design, r *model.Result) (shop.List, report.Shopping, error) {
	files := []string{file}
	orders := []shop.Order{{Design: d, Result: r, Batches: b.Batches()}}
	for _, o := range b.others {
		r, err := m.Evaluate(o.Design)
		if err != nil {
			return shop.List{}, report.Shopping{}, flaw.New("%s: %v", filepath.Base(o.Path), err)
		}
		files, orders = append(files, filepath.Base(o.Path)), append(orders, shop.Order{Design: o.Design, Result: &r, Batches: o.Batches})
	}
	l := shop.For(orders, m.Prices())
	return l, report.ShoppingOf(files, orders, l, math.NaN()), nil
}
