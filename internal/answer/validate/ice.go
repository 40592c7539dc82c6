package validate

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
)

func iceChecks() []check { return []check{iceReference, icePublished} }

// grows returns the law of one of the recipes.
func grows(name string, role phase.Role) *ice.Law {
	b := phase.Prepare(recipes[name], 0, role, solution.DefaultBound)
	return ice.Of(&b, 1)
}

// iceReference holds the rate, what it rests on and the histories against a
// program written from the same equations.
func iceReference(t *tables) ([]Row, error) {
	const name = "ice_crystal_model_reference"
	row := func(what string, x, y flaw.Word) Row {
		return Row{Table: name + " (" + what + ")", Source: separately, Unit: "%", Bar: 2, Kind: Twice, XLabel: x, YLabel: y}
	}
	rate := row("rate", "°C", "rate at which the mean diameter's cube grows, µm³ a day")
	parts := row("what it rests on", "°C", "ice, syrup and mobilities")
	history := row("histories", "µm in the reference", "µm")
	history.Note = flaw.Say("A beaten mush, hardening without new crystals, storage with and without a swing, and one thaw.")
	for _, l := range t.read(name) {
		role := phase.Dense
		if strings.HasPrefix(l.text("mix"), "foam") {
			role = phase.Foam
		}
		law := grows(l.text("mix"), role)
		at := l.num("T_C")
		if l.text("kind") == "state" {
			s := law.State(at)
			rate.addRelative(at, s.UM3PerDay, l.num("G_um3_per_day")).Label = l.text("mix")
			for column, got := range map[string]float64{"x": s.IceFraction, "phi": s.IceVolumeFraction, "f": s.ShellFactor, "w": s.SolutesFraction, "ratio": s.PerSolute, "Dw": s.WaterM2PerS, "Ds": s.SugarM2PerS, "A": s.MobilityM2PerSK} {
				parts.addRelative(at, got, l.num(column)).Label = l.text("mix") + ", " + column
			}
			continue
		}
		d, want := l.num("d_start_um"), l.num("d_end_um")
		got, err := afterwards(law, l, d)
		if err != nil {
			return nil, err
		}
		history.addRelative(want, got, want).Label = l.text("kind")
	}
	return []Row{rate, parts, history}, nil
}

// afterwards returns the diameter after a history of the table, µm.
func afterwards(law *ice.Law, l line, d float64) (float64, error) {
	y, at := d*d*d, l.num("T_C")
	switch l.text("kind") {
	case "ripen":
		y += l.num("days") * law.State(at).UM3PerDay
	case "swing":
		y += l.num("days") * law.StoredUM3PerDay(at, l.num("swing_K"))
	case "mush":
		c, ok := law.Cool(l.num("minutes"), at)
		if !ok {
			return 0, fmt.Errorf("%s: not half frozen at %g °C", l.Table, at)
		}
		y = law.BeatenUM3(y, l.num("clock"), c.Path)
	case "harden":
		path, err := history(l.text("path"))
		if err != nil {
			return 0, fmt.Errorf("%s: %w", l.Table, err)
		}
		y = law.StillUM3(y, path)
	case "thaw":
		factor, _, _, _ := law.ThawedFactor(-18, at)
		return d * factor, nil
	}
	return math.Cbrt(y), nil
}

// history reads h:°C by h:°C.
func history(text string) ([]ice.Moment, error) {
	var path []ice.Moment
	for _, p := range strings.Fields(text) {
		h, c, _ := strings.Cut(p, ":")
		hours, err := strconv.ParseFloat(h, 64)
		if err != nil {
			return nil, err
		}
		at, err := strconv.ParseFloat(c, 64)
		if err != nil {
			return nil, err
		}
		path = append(path, ice.Moment{AtMinutes: 60 * hours, C: at})
	}
	return path, nil
}

// icePublished holds stored sizes against the law, from each product's own size
// on day 0.
func icePublished(t *tables) ([]Row, error) {
	const name = "ice_crystal_published"
	row := func(what string, bar float64) Row {
		return Row{Table: name + " (" + what + ")", Unit: "%", Bar: bar, Kind: Elsewhere, XLabel: "µm published", YLabel: "µm", closed: true,
			Source: "Sinclair, McGregor et al. 2025, Exploration of Foods and Foodomics, doi 10.37349/eff.2025.1010104, tables 3 and 4"}
	}
	scatter, bias := row("scatter of stored sizes", 35), row("bias of stored sizes", 20)
	law := grows("typical 12 fat/11 msnf/15 suc", phase.Dense)
	fresh := map[string]float64{}
	sum, squares, worst, n := 0.0, 0.0, 1.0, 0.0
	for _, l := range t.read(name) {
		d, at := l.num("d_um"), l.num("T_C")
		if l.num("days") == 0 {
			fresh[l.text("product")] = d
			continue
		}
		got := ice.Banded(math.Pow(fresh[l.text("product")], 3), l.num("days")*law.UM3PerDay(at), ice.Unbroken).ValueUM
		label, why := fmt.Sprintf("%s, %g °C, %g days", l.text("product"), at, l.num("days")), ""
		if at < ice.FloorFromC {
			why = "below −23 °C the floor was set looking at this figure"
		} else {
			off := math.Log(got / d)
			sum, squares, worst, n = sum+off, squares+off*off, math.Max(worst, math.Exp(math.Abs(off))), n+1
		}
		scatter.addRelative(d, got, d).named(label, why)
		bias.addRelative(d, got, d).named(label, why)
	}
	factor, mean := math.Exp(math.Sqrt(squares/n)), math.Exp(sum/n)
	scatter.Points, bias.Points = int(n), int(n)
	scatter.RMSError, bias.RMSError = 100*(factor-1), 100*math.Abs(mean-1)
	scatter.MaxAbsError, bias.MaxAbsError = scatter.RMSError, bias.RMSError
	scatter.Pass, bias.Pass = factor <= 1.35, mean >= 0.85 && mean <= 1.2
	scatter.Note = flaw.Say("Root mean square factor %.2f less one; the worst is %.2f. The sizes differ so little that their own mean, known afterwards, would give 1.34: the level is tested, not the detail. The mix was not read and is taken as the classical one. One mean is known to about 16 %%.", factor, worst)
	bias.Note = flaw.Say("Mean factor %.2f less one, where 0.85 to 1.2 is asked. Other laboratories print 15 µm for what this one prints as 56 µm.", mean)
	return []Row{scatter, bias}, nil
}
