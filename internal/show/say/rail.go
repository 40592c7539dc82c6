package say

// What stands on the rail of temperatures.
const (
	NotKnown    Message = "not known" // a curve ends because nobody knows how it goes on
	Scooped     Message = "scoops"
	BothScoop   Message = "both scoop"
	NowhereBoth Message = "they never scoop together"
)

// RailHardness and RailIce name the curves of a phase.
func RailHardness(phase string) string { return T("%s hardness", phase) }

// RailIce names the thin one.
func RailIce(phase string) string { return T("%s ice by volume", phase) }
