package say

// What stands on the rail of temperatures.
const (
	NotKnown    = "not known" // a curve ends because nobody knows how it goes on
	Scooped     = "scoops"
	BothScoop   = "both scoop"
	NowhereBoth = "nowhere do both scoop"
)

// RailHardness and RailIce name the curves of a phase.
func RailHardness(phase string) string { return phase + " hardness" }

// RailIce names the thin one.
func RailIce(phase string) string { return phase + " ice by volume" }
