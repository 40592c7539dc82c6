package cold

import (
	"encoding/json"
	"math"

	"ripplewright/internal/answer/model"
)

// figure is a number for JSON: null where it is unknown.
type figure float64

// MarshalJSON writes NaN and the infinities as null.
func (f figure) MarshalJSON() ([]byte, error) {
	if v := float64(f); !math.IsNaN(v) && !math.IsInf(v, 0) {
		return json.Marshal(v)
	}
	return []byte("null"), nil
}

type object = map[string]any

// band adds name, name_low and name_high to o.
func band(o object, name string, r Range) {
	o[name], o[name+"_low"], o[name+"_high"] = figure(r.Value), figure(r.Low), figure(r.High)
}

// MarshalJSON writes the answer without curves and pictures. Unknown figures
// are null; a figure's band has its name with _low and _high.
func (a Answer) MarshalJSON() ([]byte, error) {
	harden := object{
		"start_c": figure(a.Harden.StartC), "air_c": figure(a.Harden.AirC),
		"core_to_c": figure(a.Harden.CoreToC), "move_core_to_c": figure(a.Harden.MoveC),
	}
	harden["sentence"] = a.Harden.Sentence
	band(harden, "hours", a.Harden.Hours)
	band(harden, "move_hours", a.Harden.MoveHours)

	still := a.StillFreeze.Dense.object()
	still["dense"] = a.StillFreeze.Dense.object()
	still["foam"] = a.StillFreeze.Foam.object()
	still["sentence"] = a.StillFreeze.Sentence
	still["start_first"] = word(a.StillFreeze.StartFirst)
	still["head_start_minutes"] = figure(a.StillFreeze.HeadStartMinutes)
	still["together_minutes"] = figure(a.StillFreeze.ReadyMinutes)

	notes := a.Notes
	if notes == nil {
		notes = []model.Warning{}
	}
	warnings := make([]object, len(notes))
	for i, n := range notes {
		warnings[i] = object{"code": n.Code, "message": n.Message, "where": n.Where, "severity": n.Severity.String()}
	}
	return json.Marshal(object{
		"profile": a.Profile.Name,
		"tub":     object{"radius_mm": figure(a.Tub.RadiusMM), "height_mm": figure(a.Tub.HeightMM)},
		"harden":  harden, "still_freeze": still,
		"serving_window": a.Counter.object(), "refrigerator": a.Fridge.object(),
		"storage": a.Storage.object(), "warnings": warnings,
	})
}

func word(s string) any {
	if s == "" {
		return nil
	}
	return s
}

func (c *Cooling) object() object {
	stirs := make([]object, len(c.Stirs))
	for i, s := range c.Stirs {
		stirs[i] = object{"minute": figure(s.Minute), "mean_c": figure(s.MeanC), "edge_c": figure(s.EdgeC), "water_frozen_percent": figure(s.WaterFrozenPercent)}
	}
	o := object{
		"present": c.Present, "stirred": c.Stirred, "stirs": stirs,
		"start_c": figure(c.StartC), "depth_mm": figure(c.Vessel.HeightMM), "volume_ml": figure(c.VolumeML),
		"whip_c": figure(c.WhipC), "ready_c": figure(c.ReadyC), "ready_water_frozen_percent": figure(100 * c.ReadyIce), "ready_means": word(c.How),
	}
	band(o, "first_ice_minutes", c.FirstIce)
	band(o, "whip_minutes", c.Whip)
	band(o, "ready_minutes", c.Ready)
	return o
}

func (s *Serving) object() object {
	o := object{
		"place": s.Place, "air_c": figure(s.AirC), "start_c": figure(s.StartC), "ok": s.OK, "sentence": s.Sentence,
		"band_from_c": figure(s.FromC), "band_to_c": figure(s.ToC),
		"ring_c": figure(s.RingC), "core_c": figure(s.CoreC), "end_core_c": figure(s.EndCoreC), "melt_c": figure(s.MeltC),
		"dense": s.Dense.object(), "foam": s.Foam.object(),
	}
	band(o, "from_minutes", s.From)
	band(o, "to_minutes", s.To)
	band(o, "whole_minutes", s.Whole)
	band(o, "core_minutes", s.Core)
	band(o, "serving_temperature_ring_minutes", s.RingServing)
	band(o, "serving_temperature_mean_minutes", s.MeanServing)
	band(o, "melts_at_wall_minutes", s.MeltsAtWall)
	return o
}

func (b *Band) object() any {
	if !b.Present {
		return nil
	}
	o := object{"ok": b.OK, "from_c": figure(b.FromC), "to_c": figure(b.ToC)}
	band(o, "from_minutes", b.From)
	band(o, "to_minutes", b.To)
	return o
}

func (s *Storage) object() object {
	return object{
		"at_c": figure(s.AtC), "swing_k": figure(s.SwingK), "dense": s.Dense.object(), "foam": s.Foam.object(),
		"water_drawn": s.WaterDrawn, "drawn_by": word(s.Drawer), "drawn_g_per_100g": figure(s.DrawnG),
		"keep_below_c": figure(s.KeepBelowC), "change": word(s.Change), "sentence": s.Sentence,
		"ageing_index": figure(s.AgeingIndex), "ageing_index_swing_warm": figure(s.AgeingIndexWarm), "ageing_note": s.AgeingNote,
	}
}

func (s *Stored) object() any {
	if !s.Present {
		return nil
	}
	return object{
		"initial_freezing_point_c": figure(s.FreezingPointC), "water_frozen_percent": figure(s.WaterFrozenPercent),
		"has_ice": s.HasIce, "swing_melts_percent": figure(s.SwingPercent),
	}
}
