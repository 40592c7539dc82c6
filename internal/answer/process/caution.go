package process

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/limits"
)

// CautionCode names what a cook must know before the making begins. Package say
// has its words.
type CautionCode string

// The cautions.
const (
	WhitesStayCool CautionCode = "whites_stay_cool"      // the syrup does not bring fresh whites to the figure for egg dishes
	WhitesStayRaw  CautionCode = "whites_stay_raw"       // no hot syrup at all
	FoamAirBeyond  CautionCode = "foam_air_beyond_tool"  // the design asks more air than such a foam comes to
	CustardAirPast CautionCode = "custard_air_past_tool" // likewise of the custard
	ManyWhites     CautionCode = "whites_beyond_mixer"
	FewWhites      CautionCode = "whites_too_few"
	DriedDry       CautionCode = "dried_whites_without_water"
	EnzymeLives    CautionCode = "starch_never_hot_enough" // water boils too cool up here for starch beside yolk
	BathTooSlow    CautionCode = "cooling_too_slow"
	FridgeWarm     CautionCode = "refrigerator_warm"
	FreezerFull    CautionCode = "freezer_beyond_rating"
)

// Caution is a code with the figures that it rests on.
type Caution struct {
	Code            CautionCode
	Has, Limit, Low float64
	Step            limits.Step // of an air limit
}

func (p *Process) cautions(r *model.Result) []Caution {
	var out []Caution
	add := func(code CautionCode, such bool, has, limit float64) {
		if such {
			out = append(out, Caution{Code: code, Has: has, Limit: limit})
		}
	}
	f, c := &p.Foam, &p.Custard
	if f.Present {
		fresh := f.Whites == FreshWhite || f.Whites == FreshYolk
		add(WhitesStayCool, fresh && f.Hot && !f.Reaches, f.PeakC, EggFigureC)
		add(WhitesStayRaw, fresh && !f.Hot, 0, EggFigureC)
		if f.AskedOverrunPercent > f.Air.HighPercent && !warned(r, limits.FoamAir.Code, "foam.overrun_percent") {
			out = append(out, Caution{Code: FoamAirBeyond, Has: f.AskedOverrunPercent, Limit: f.Air.HighPercent, Low: f.Air.LowPercent})
		}
		add(ManyWhites, f.Bowls > 1, f.WhiteG, MostWhiteG)
		add(DriedDry, f.DriedWaterG < swellsIn, f.DriedWaterG, madeUp-1)
		add(FewWhites, f.WhiteG > 0 && f.Hot && f.WhiteG < LeastWhiteG, f.WhiteG, LeastWhiteG)
	}
	if c.Present {
		air := 100 * r.Dense.Body.OverrunFraction
		step, past := p.Kitchen.CustardAir().Passed(air)
		if past && step.Level >= limits.Warn && !warned(r, limits.CustardAir.Code, "dense.overrun_percent") {
			out = append(out, Caution{Code: CustardAirPast, Has: air, Limit: step.At, Step: step})
		}
		add(EnzymeLives, c.Yolk && c.Starch() && c.StarchC < enzymeDiesC, c.StarchC, enzymeDiesC)
		add(BathTooSlow, !c.Cool.BathMeets, c.Cool.BathMinutes, ColdByMin)
		add(FridgeWarm, p.Kitchen.FridgeC > ColdC, p.Kitchen.FridgeC, ColdC)
	}
	add(FreezerFull, p.Freezing.Loaded > 1 && !warned(r, limits.FreezerLoad.Code, "tubs"), p.Freezing.Loaded, 1)
	return out
}

// warned reports whether the design itself is warned of that, in any kitchen.
func warned(r *model.Result, code, where string) bool {
	for _, w := range r.Warnings {
		if w.Code == code && w.Where == where && w.Severity > model.Note {
			return true
		}
	}
	return false
}

// CautionOf returns the caution of that code, and whether there is one.
func (p *Process) CautionOf(code CautionCode) (Caution, bool) {
	for _, c := range p.Cautions {
		if c.Code == code {
			return c, true
		}
	}
	return Caution{Has: math.NaN()}, false
}
