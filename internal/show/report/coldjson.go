package report

import (
	"encoding/json"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/show/say"
)

type dict = map[string]any

// timed adds name, name_low and name_high to o.
func timed(o dict, name string, r cold.Range) {
	o[name], o[name+"_low"], o[name+"_high"] = Number(r.Value), Number(r.Low), Number(r.High)
}

// MarshalJSON writes the answer without curves and pictures. Unknown figures
// are null; a figure's band has its name with _low and _high.
func (c Cold) MarshalJSON() ([]byte, error) {
	a := &c.Answer
	harden := dict{
		"start_c": Number(a.Harden.StartC), "air_c": Number(a.Harden.AirC),
		"core_to_c": Number(a.Harden.CoreToC), "move_core_to_c": Number(a.Harden.MoveC),
	}
	harden["already"] = a.Harden.Already
	harden["sentence"] = say.Harden(Reads, &a.Harden)
	timed(harden, "hours", a.Harden.Hours)
	timed(harden, "move_hours", a.Harden.MoveHours)

	still := coolingJSON(&a.StillFreeze.Dense)
	still["dense"] = coolingJSON(&a.StillFreeze.Dense)
	still["foam"] = coolingJSON(&a.StillFreeze.Foam)
	still["sentence"] = say.StillFreeze(Reads, &a.StillFreeze)
	still["start_first"] = word(a.StillFreeze.StartFirst)
	still["head_start_minutes"] = Number(a.StillFreeze.HeadStartMinutes)
	still["together_minutes"] = Number(a.StillFreeze.ReadyMinutes)

	return json.Marshal(dict{
		"profile": a.Profile.Name,
		"tub":     dict{"radius_mm": Number(a.Tub.RadiusMM), "height_mm": Number(a.Tub.HeightMM)},
		"harden":  harden, "still_freeze": still,
		"serving_window": servingJSON(&a.Counter), "refrigerator": servingJSON(&a.Fridge),
		"storage": storageJSON(&a.Storage), "warnings": warningObjects(a.Notes),
	})
}

func word(s string) any {
	if s == "" {
		return nil
	}
	return s
}

// readyWord says what ready means, null of a phase that there is not.
func readyWord(c *cold.Cooling) any {
	if !c.Present {
		return nil
	}
	return say.Ready(Reads, c)
}

func coolingJSON(c *cold.Cooling) dict {
	stirs := make([]dict, len(c.Stirs))
	for i, s := range c.Stirs {
		stirs[i] = dict{"minute": Number(s.AtMinutes), "mean_c": Number(s.MeanC), "edge_c": Number(s.EdgeC), "water_frozen_percent": Number(s.WaterFrozenPercent)}
	}
	o := dict{
		"present": c.Present, "stirred": c.Stirred, "stirs": stirs,
		"start_c": Number(c.StartC), "depth_mm": Number(c.Vessel.HeightMM), "volume_ml": Number(c.VolumeML),
		"whip_c": Number(c.WhipC), "ready_c": Number(c.ReadyC), "ready_water_frozen_percent": Number(100 * c.ReadyIceFraction), "ready_means": readyWord(c),
	}
	timed(o, "first_ice_minutes", c.FirstIceMinutes)
	timed(o, "whip_minutes", c.WhipMinutes)
	timed(o, "ready_minutes", c.ReadyMinutes)
	return o
}

func servingJSON(s *cold.Softening) dict {
	o := dict{
		"place": s.Place, "air_c": Number(s.AirC), "start_c": Number(s.StartC), "ok": s.OK, "sentence": say.Softening(Reads, s),
		"band_from_c": Number(s.FromC), "band_to_c": Number(s.ToC),
		"ring_c": Number(s.RingC), "core_c": Number(s.CoreC), "end_core_c": Number(s.EndCoreC), "melt_c": Number(s.MeltC),
		"dense": bandJSON(&s.Dense), "foam": bandJSON(&s.Foam),
	}
	timed(o, "from_minutes", s.FromMinutes)
	timed(o, "to_minutes", s.ToMinutes)
	timed(o, "whole_minutes", s.WholeMinutes)
	timed(o, "core_minutes", s.CoreMinutes)
	timed(o, "serving_temperature_ring_minutes", s.RingServingMinutes)
	timed(o, "serving_temperature_mean_minutes", s.MeanServingMinutes)
	timed(o, "melts_at_wall_minutes", s.MeltsAtWallMinutes)
	return o
}

func bandJSON(b *cold.ScoopTimes) any {
	if !b.Present {
		return nil
	}
	o := dict{"ok": b.OK, "from_c": Number(b.FromC), "to_c": Number(b.ToC)}
	timed(o, "from_minutes", b.FromMinutes)
	timed(o, "to_minutes", b.ToMinutes)
	return o
}

func storageJSON(s *cold.Storage) dict {
	change := say.StorageChange(Reads, s)
	return dict{
		"at_c": Number(s.AtC), "swing_k": Number(s.SwingK), "dense": storedJSON(&s.Dense), "foam": storedJSON(&s.Foam),
		"water_drawn": s.WaterDrawn, "drawn_by": word(s.Drawer), "drawn_g_per_100g": Number(s.DrawnG),
		"swing_melts": s.Swing.String(), "swing_melts_most_of": word(s.SwingPhase), "keep_below_c": Number(s.KeepBelowC), "change": word(change), "sentence": strings.TrimSpace(say.Storage(Reads, s) + " " + change),
		"ageing_index": Number(s.AgeingIndex), "ageing_index_swing_warm": Number(s.AgeingIndexWarm), "ageing_note": say.Ageing(Reads, s),
	}
}

func storedJSON(s *cold.Stored) any {
	if !s.Present {
		return nil
	}
	return dict{
		"initial_freezing_point_c": Number(s.FreezingPointC), "water_frozen_percent": Number(s.WaterFrozenPercent),
		"has_ice": s.HasIce, "swing_melts_percent": Number(s.SwingPercent), "has_ice_swing_warm": s.IceWhenWarm,
	}
}
