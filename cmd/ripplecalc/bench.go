package main

import (
	"errors"
	"fmt"
	"io"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/userdata"
)

// bench is a model with the library on its shelf.
type bench struct{ *model.Model }

// openBench reads the library that the program carries, the maker's own
// ingredients, which win, and their prices.
func openBench() (*bench, error) {
	lib, err := ingredient.Open(assets.Library)
	if err != nil {
		return nil, &faultError{err}
	}
	if lib, err = userdata.Onto(lib); err != nil {
		return nil, err
	}
	prices, err := userdata.OwnPrices()
	if err != nil {
		return nil, err
	}
	return &bench{model.New(lib).Priced(prices)}, nil
}

// load reads the design file named, "-" being standard input, and makes sure
// that the library has its ingredients.
func (b *bench) load(s *shell, name string) (*designfile.File, error) {
	if name != "-" {
		return designfile.LoadWith(name, b.Library())
	}
	data, err := io.ReadAll(io.LimitReader(s.in, designfile.MaxSize+1))
	if err != nil {
		return nil, flaw.New("read standard input: %v", err)
	}
	return designfile.DecodeWith("standard input", data, b.Library())
}

// evaluate computes the design of file f. Its errors name file and line.
func (b *bench) evaluate(f *designfile.File) (model.Result, error) {
	return b.evaluateAt(f, f.Design.Serving.TemperatureC)
}

// evaluateAt computes it at c °C.
func (b *bench) evaluateAt(f *designfile.File, c float64) (model.Result, error) {
	r, err := b.EvaluateAt(f.Design, c)
	var input *model.InputError
	if !errors.As(err, &input) {
		return r, err
	}
	found := &designfile.Error{Name: f.Name}
	for _, p := range input.Problems {
		found.Problems = append(found.Problems, designfile.Problem{
			Kind: designfile.Invalid, Line: f.Line(p.Path), Path: p.Path, Err: p.Err,
		})
	}
	return r, found
}

// read loads a design file and evaluates it, as the batches beside it have taught.
func (b *bench) read(s *shell, name string) (*designfile.File, *model.Result, error) {
	f, err := b.load(s, name)
	if err != nil {
		return nil, nil, err
	}
	if b, err = b.taughtBy(f, name); err != nil {
		return nil, nil, err
	}
	r, err := b.evaluate(f)
	return f, &r, err
}

// readTogether loads and evaluates designs that are compared, all as the batches beside
// the first have taught: what differs is then of the designs. The window does so with the
// open design.
func (b *bench) readTogether(s *shell, names []string) (files []*designfile.File, results []model.Result, err error) {
	for i, name := range names {
		f, err := b.load(s, name)
		if err != nil {
			return nil, nil, err
		}
		if i == 0 {
			if b, err = b.taughtBy(f, name); err != nil {
				return nil, nil, err
			}
		}
		r, err := b.evaluate(f)
		if err != nil {
			return nil, nil, err
		}
		files, results = append(files, f), append(results, r)
	}
	return files, results, nil
}

// taughtBy returns the bench as the batches beside the design file of that name have
// taught it. Errors name the file of the batches.
func (b *bench) taughtBy(f *designfile.File, name string) (*bench, error) {
	_, taught, err := notebookOf(f, name)
	if err != nil {
		return nil, err
	}
	return &bench{taught.Model(b.Model)}, nil
}

// place returns "file:line: " of a path in f, without the line where the file
// does not have it.
func place(f *designfile.File, path string) string {
	if n := f.Line(path); n > 0 {
		return fmt.Sprintf("%s:%d: ", f.Name, n)
	}
	return f.Name + ": "
}

// open loads and evaluates one design file.
func open(s *shell, name string) (*designfile.File, *model.Result, error) {
	_, f, r, err := openWith(s, name)
	return f, r, err
}

// openWith is open, with the bench that evaluated it.
func openWith(s *shell, name string) (*bench, *designfile.File, *model.Result, error) {
	b, err := openBench()
	if err != nil {
		return nil, nil, nil, err
	}
	f, err := b.load(s, name)
	if err != nil {
		return nil, nil, nil, err
	}
	if b, err = b.taughtBy(f, name); err != nil {
		return nil, nil, nil, err
	}
	r, err := b.evaluate(f)
	if err != nil {
		return nil, nil, nil, err
	}
	return b, f, &r, nil
}
