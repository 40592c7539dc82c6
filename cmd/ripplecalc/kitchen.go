package main

import (
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/versions"
)

// notebookOf returns the batches beside a design file and what they teach of it in its own
// kitchen, the ordinary one where that is unknown here; a design from standard input has
// none. Errors name the file of the batches.
func notebookOf(f *designfile.File, name string) (batch.Notebook, learn.Posterior, error) {
	k, err := publishedKitchen(f, "")
	if err != nil {
		k = cold.Default()
	}
	return notebookIn(f, name, k)
}

func notebookIn(f *designfile.File, name string, k cold.Profile) (batch.Notebook, learn.Posterior, error) {
	if name == "-" {
		return batch.Notebook{}, learn.Prior(), nil
	}
	n, err := batch.Load(batch.PathOf(versions.DesignOf(name)))
	if err != nil {
		return n, learn.Prior(), err
	}
	return n, learn.For(&n, &f.Design, k), nil
}

// kitchenOf returns the kitchen in which the design of file name is made, profile or,
// for "", the design's own, as the batches beside the file have shown it.
func kitchenOf(f *designfile.File, name, profile string) (cold.Profile, error) {
	k, err := publishedKitchen(f, profile)
	if err != nil {
		return k, err
	}
	_, p, err := notebookIn(f, name, k)
	if err != nil {
		return k, err
	}
	return p.Kitchen(&f.Design, k), nil
}

// publishedKitchen is kitchenOf with nothing learnt: what batches are compared with.
func publishedKitchen(f *designfile.File, profile string) (cold.Profile, error) {
	if profile == "" {
		profile = f.Design.Kitchen.Profile
	}
	k, err := cold.FindOwn(profile)
	if err != nil {
		return k, flaw.New("%s: %v", f.Name, err)
	}
	return k, nil
}
