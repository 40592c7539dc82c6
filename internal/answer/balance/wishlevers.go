package balance

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/design"
)

func packsOf(items []string, lib *ingredient.Library, d design.Design) (map[string]float64, error) {
	packs := map[string]float64{}
	for _, item := range items {
		id, rest, _ := strings.Cut(item, " ")
		if wrong := inDesign(id, lib, d); wrong != nil {
			return nil, wrong
		}
		g, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(rest, "g")), 64)
		if err != nil || !(g >= 1 && g <= design.MaxGrams) {
			return nil, flaw.New("%s is no ingredient with the g of its pack, as cream_heavy 250", echo.Quoted(item))
		}
		packs[id] = g
	}
	return packs, nil
}

func rangesOf(items []string, lib *ingredient.Library, d design.Design) ([]Range, error) {
	var out []Range
	for _, item := range items {
		r := Range{}
		if n, err := fmt.Sscanf(item, "%s %f to %f", &r.Ingredient, &r.Low, &r.High); n != 3 || err != nil || !(0 <= r.Low && r.Low <= r.High && r.High <= design.MaxGrams) {
			return nil, flaw.New("%s is no ingredient with the g between which it may go, as milk_whole 300 to 500", echo.Quoted(item))
		}
		if wrong := inDesign(r.Ingredient, lib, d); wrong != nil {
			return nil, wrong
		}
		out = append(out, r)
	}
	return out, nil
}

// inDesign says that no line of d is of id.
func inDesign(id string, lib *ingredient.Library, d design.Design) error {
	for _, p := range design.Parts {
		if slices.ContainsFunc(d.Lines(p), func(l design.Line) bool { return l.Ingredient == id }) {
			return nil
		}
	}
	if _, ok := lib.With(d.Own).Find(id); !ok {
		return lib.Unknown(id)
	}
	return flaw.New("the design has no line of %s", echo.Quoted(id))
}

// groups are the words by which a file locks settings.
var groups = map[string][]string{
	"air":   {"dense.overrun_percent", "foam.overrun_percent"},
	"ratio": {"blend.foam_volume_percent"},
	"syrup": {"foam.syrup.cook_temperature_c"},
	"fill":  {"tubs.fill_percent"},
}

func locksOf(items []string, lib *ingredient.Library, d design.Design) (Locks, error) {
	l := Locks{Lines: map[LineAt]bool{}, Settings: map[string]bool{}}
	for _, item := range items {
		if paths, ok := groups[item]; ok {
			for _, p := range paths {
				l.Settings[p] = true
			}
			continue
		}
		if wrong := inDesign(item, lib, d); wrong != nil {
			return l, wrong
		}
		for _, p := range design.Parts {
			for i, line := range d.Lines(p) {
				if line.Ingredient == item {
					l.Lines[LineAt{p, i}] = true
				}
			}
		}
	}
	return l, nil
}
