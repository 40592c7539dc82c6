package say

// A Weighing asks for the weights that tell a figure.
type Weighing struct {
	Title  string
	Intro  string
	Fields []string // the last is that of the empty vessel
}

// The weighings.
func CupWeighing() Weighing {
	return Weighing{T("Overrun from a cup weighed twice"),
		T("Fill the same cup to the brim, level it, and weigh it: once with the mix before beating, once with the finished phase."),
		[]string{T("Cup with the mix"), T("Cup with the finished phase"), T("The empty cup, 0 if tared")}}
}

// PanWeighing is that of a pan.
func PanWeighing() Weighing {
	return Weighing{T("Stove loss from a pan weighed twice"),
		T("Weigh the pan with everything in it, once before the heat and once when the custard comes off it."),
		[]string{T("Pan before the heat"), T("Pan after the heat"), T("The empty pan, 0 if tared")}}
}

// syrupWeighing is that of the syrup's pan.
func syrupWeighing() Weighing {
	return Weighing{T("Syrup by its weight"),
		T("Weigh the pan with the boiled syrup, and the empty pan. The syrup's ingredients less this weight is the water boiled off: the thermometer is not needed."),
		[]string{T("Pan with the syrup"), T("The empty pan, 0 if tared")}}
}

// SyrupWeighing is that of the syrup, which weighed so many g when it was weighed
// last; 0: it was not.
func SyrupWeighing(s Style, weighedG float64) Weighing {
	w := syrupWeighing()
	if weighedG > 0 {
		w.Intro += " " + T("Now %s counts; a weight of 0 lets the thermometer count again.", s.MassTo(weighedG, 1))
	}
	return w
}

// What a weighing comes to.
const (
	TwoTellOverrun Message = "Two weights tell the overrun."
	MoreThanCup    Message = "Both weights must be more than the empty cup's."
	CupGained      Message = "The cup weighs more with the finished phase than with the mix: weigh again."
	TwoTellLoss    Message = "Two weights tell the loss."
	MoreThanPan    Message = "Both weights must be more than the empty pan's."
	PanGained      Message = "The pan has gained weight: weigh again."
	OneTellsSyrup  Message = "The pan's weight tells the syrup's."
	EmptyHeavier   Message = "The empty pan weighs more than the full one: weigh again."
	NotWeighed     Message = "Not weighed: the thermometer counts."
)

// Overrun, TooMuchOverrun, StoveLoss, TooMuchLoss and SyrupWeight word what a
// weighing tells.
func Overrun(s Style, percent float64) string { return T("Overrun %s.", s.Percent(percent, 0)) }

// TooMuchOverrun says that an overrun is more than a phase holds.
func TooMuchOverrun(s Style, percent, most float64) string {
	return T("An overrun of %s is more than the %s that such a phase holds: weigh again.", s.Percent(percent, 0), s.Percent(most, 0))
}

// StoveLoss is a loss of water.
func StoveLoss(s Style, percent float64) string { return T("Stove loss %s.", s.Percent(percent, 1)) }

// TooMuchLoss says that a loss is more than a custard can lose.
func TooMuchLoss(s Style, percent, most float64) string {
	return T("A loss of %s is more than the %s that a custard can lose: weigh again.", s.Percent(percent, 1), s.Percent(most, 0))
}

// SyrupWeight is what a syrup weighs, g.
func SyrupWeight(s Style, g float64) string { return T("%s of syrup.", s.MassTo(g, 1)) }
