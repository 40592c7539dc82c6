package say

import "ripplewright/internal/answer/icy"

// The words about the pictures of the ice.
const (
	WeeksAxis   Message = "weeks in the freezer"
	CrystalAxis         = "µm"
	ShareAxis   Message = "% of the crystals' volume"
	AtCore      Message = "core"
	AtWall      Message = "wall"
	IceFrom     Message = "Where the crystals come from"
	IceHelps    Message = "What would help, each by itself"
)

// IceBrief says how icy the custard is when hardened, and when that changes.
func IceBrief(s Style, a *icy.Answer) Brief {
	c := &a.Custard
	switch {
	case !c.Present:
		return Brief{T("no custard"), ""}
	case !c.Frozen:
		return Brief{T("no ice"), T("the custard has none at %s", s.Temperature(a.AtC))}
	case c.Melts:
		return Brief{Of(c.Hardened.Name()), T("but the freezer's swing melts its edge: icy")}
	}
	if !iceChanges(a) {
		return Brief{Of(c.Hardened.Name()), T("when hardened and %s", iceThen(s, a))}
	}
	return Brief{Of(c.Hardened.Name()), T("when hardened; %s", iceThen(s, a))}
}

// IceHelp says what would help, the most helpful first; "" where nothing does or it
// is not known yet.
func IceHelp(s Style, list []icy.Remedy) string {
	if len(list) == 0 {
		return ""
	}
	text := T("%s:", IceHelps.String())
	for i := range list {
		text += "\n" + IceRemedy(s, &list[i])
	}
	return text
}

// IceStepShort is IceStep beside a bar.
func IceStepShort(x icy.Step) string {
	switch x {
	case icy.Seed:
		return T("first")
	case icy.Mush:
		return T("beaten")
	case icy.Unparted:
		return T("unbeaten")
	case icy.Hardening:
		return T("hardening")
	case icy.Storage:
		return T("storage")
	case icy.Swing:
		return T("swing")
	}
	return T("door")
}
