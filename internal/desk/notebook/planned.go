package notebook

import (
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// Planned is a batch of d in kitchen k, as published, that comes out as f forecasts: what a
// maker may say it did, setting by setting. A syrup is weighed in its pan, so that of noted
// decides.
func Planned(f *batch.Forecast, d *design.Design, k cold.Profile, noted *batch.Batch) batch.Batch {
	var b batch.Batch
	if *f == (batch.Forecast{}) {
		return b
	}
	b.Syrup.WaterBoilsC, b.Custard.WeighedG, b.Custard.CupG = f.WaterBoilsC, f.CustardG, f.CustardCupG
	if f.SyrupG.Known {
		b.Syrup.ReadingC = batch.Of(d.Foam.Syrup.CookTemperatureC + f.ProbeK.Value)
		if pan := noted.Syrup.PanG; pan.Known {
			b.Syrup.WeighedG = batch.Of(pan.Value + f.SyrupG.Value)
		}
	}
	b.Foam.WhitesC, b.Foam.CupG = f.FoamC, f.FoamCupG
	b.FreezerC, b.RoomC = f.FreezerC, batch.Of(k.Counter.AirC)
	b.Scooped.CoreC, b.Scooped.AfterMinutes = f.FreezerC, f.ScoopedMinutes
	b.Ate.AtC = batch.Of(d.Serving.TemperatureC)
	if h := f.HardnessKPa; h.Known {
		b.Ate.Hardness = phase.WordFor(h.Value).Name
	}
	if um := f.IceUM; um.Known {
		b.Ate.Icy = ice.Words[ice.WordFor(um.Value)].Name
	}
	return b
}
