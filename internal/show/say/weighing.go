package say

// A Weighing asks for the weights that tell a figure.
type Weighing struct {
	Title  string
	Intro  string
	Fields []string // the last is that of the empty vessel
}

// The weighings.
var (
	CupWeighing = Weighing{"Overrun from a cup weighed twice",
		"Fill the same cup to the brim, level it, and weigh it: once with the mix before beating, once with the finished phase.",
		[]string{"Cup with the mix", "Cup with the finished phase", "The empty cup, 0 if tared"}}
	PanWeighing = Weighing{"Stove loss from a pan weighed twice",
		"Weigh the pan with everything in it, once before the heat and once when the custard comes off it.",
		[]string{"Pan before the heat", "Pan after the heat", "The empty pan, 0 if tared"}}
	syrupWeighing = Weighing{"Syrup by its weight",
		"Weigh the pan with the boiled syrup, and the empty pan. The syrup's ingredients less this weight is the water boiled off: the thermometer is not needed.",
		[]string{"Pan with the syrup", "The empty pan, 0 if tared"}}
)

// SyrupWeighing is that of the syrup, which weighed so many g when it was weighed
// last; 0: it was not.
func SyrupWeighing(s Style, weighedG float64) Weighing {
	w := syrupWeighing
	if weighedG > 0 {
		w.Intro += " Now " + s.MassTo(weighedG, 1) + " counts; a weight of 0 lets the thermometer count again."
	}
	return w
}

// What a weighing comes to.
const (
	TwoTellOverrun = "Two weights tell the overrun."
	MoreThanCup    = "Both weights must be more than the empty cup's."
	CupGained      = "The cup weighs more with the finished phase than with the mix: weigh again."
	TwoTellLoss    = "Two weights tell the loss."
	MoreThanPan    = "Both weights must be more than the empty pan's."
	PanGained      = "The pan has gained weight: weigh again."
	OneTellsSyrup  = "The pan's weight tells the syrup's."
	EmptyHeavier   = "The empty pan weighs more than the full one: weigh again."
	NotWeighed     = "Not weighed: the thermometer counts."
)

// Overrun, TooMuchOverrun, StoveLoss, TooMuchLoss and SyrupWeight word what a
// weighing tells.
func Overrun(s Style, percent float64) string { return "Overrun " + s.Percent(percent, 0) + "." }

// TooMuchOverrun says that an overrun is more than a phase holds.
func TooMuchOverrun(s Style, percent, most float64) string {
	return "An overrun of " + s.Percent(percent, 0) + " is more than the " + s.Percent(most, 0) + " that such a phase holds: weigh again."
}

// StoveLoss is a loss of water.
func StoveLoss(s Style, percent float64) string { return "Stove loss " + s.Percent(percent, 1) + "." }

// TooMuchLoss says that a loss is more than a custard can lose.
func TooMuchLoss(s Style, percent, most float64) string {
	return "A loss of " + s.Percent(percent, 1) + " is more than the " + s.Percent(most, 0) + " that a custard can lose: weigh again."
}

// SyrupWeight is what a syrup weighs, g.
func SyrupWeight(s Style, g float64) string { return s.MassTo(g, 1) + " of syrup." }
