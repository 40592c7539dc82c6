package say

import "ripplewright/internal/answer/icy"

// The words about the pictures of the ice.
const (
	WeeksAxis   = "weeks in the freezer"
	CrystalAxis = "µm"
	ShareAxis   = "% of the crystals' volume"
	AtCore      = "core"
	AtWall      = "wall"
	IceFrom     = "Where the crystals come from"
	IceHelps    = "What would help, each by itself"
)

// IceBrief says how icy the custard is when hardened, and when that changes.
func IceBrief(s Style, a *icy.Answer) Brief {
	c := &a.Custard
	switch {
	case !c.Present:
		return Brief{"no custard", ""}
	case !c.Frozen:
		return Brief{"no ice", "the custard has none at " + s.Temperature(a.AtC)}
	case c.Melts:
		return Brief{c.Hardened.Name(), "but the freezer's swing melts its edge: icy"}
	}
	if !iceChanges(a) {
		return Brief{c.Hardened.Name(), "when hardened and " + iceThen(s, a)}
	}
	return Brief{c.Hardened.Name(), "when hardened; " + iceThen(s, a)}
}

// IceHelp says what would help, the most helpful first; "" where nothing does or it
// is not known yet.
func IceHelp(s Style, list []icy.Remedy) string {
	if len(list) == 0 {
		return ""
	}
	text := IceHelps + ":"
	for i := range list {
		text += "\n" + IceRemedy(s, &list[i])
	}
	return text
}

// IceStepShort is IceStep beside a bar.
func IceStepShort(x icy.Step) string {
	switch x {
	case icy.Seed:
		return "first"
	case icy.Mush:
		return "beaten"
	case icy.Unparted:
		return "unbeaten"
	case icy.Hardening:
		return "hardening"
	case icy.Storage:
		return "storage"
	case icy.Swing:
		return "swing"
	}
	return "door"
}
