package say

// What stands on the rail of temperatures.
const (
	NotKnown    = "not known" // a curve ends because nobody knows how it goes on
	Scooped     = "scoops"
	BothScoop   = "both scoop"
	NowhereBoth = "they never scoop together"
)

// RailHardness and RailIce name the curves of a phase.
func RailHardness(phase string) string { return phase + " hardness" }

// RailIce names the thin one.
func RailIce(phase string) string { return phase + " ice by volume" }
