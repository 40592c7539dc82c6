package tub

// Food is a food that colours a dessert, with our name for it and what it makes
// of a phase: "#rrggbb". A foam scatters light, so the same food is paler in it.
type Food struct {
	Name  string
	Dense string // as the custard
	Foam  string // as the foam
}

// Foods are starting points for a maker's colours, pale before dark. They were
// chosen by eye: a real custard depends on how much of the food is in it.
func Foods() []Food { return foods }

var foods = []Food{
	{"egg white", "#f3ead6", "#fbf6ea"},
	{"oat milk", "#cbb083", "#f7efe2"},
	{"egg yolk", "#d9a441", "#f7e3b0"},
	{"honey", "#c98a2b", "#fbf4e4"},
	{"sea buckthorn", "#e8a32b", "#fdd9a0"},
	{"saffron", "#e0901f", "#f9cf7e"},
	{"carrot", "#d9722e", "#f6bb8c"},
	{"hazelnut", "#b98a4e", "#eeddc2"},
	{"caramel", "#8a4a1c", "#e3b27c"},
	{"cocoa", "#4a2f24", "#b8947e"},
	{"liquorice", "#2e2a2b", "#9a9391"},
	{"matcha", "#8a9a4a", "#dbe3b4"},
	{"pistachio", "#a9ad62", "#e3e6bd"},
	{"spinach", "#4f7040", "#bdd0a8"},
	{"raspberry", "#b2304b", "#f2b7c0"},
	{"beetroot", "#7d1f42", "#e39ab4"},
	{"hibiscus", "#9c2440", "#f0a3ad"},
	{"blackcurrant", "#4b2142", "#c39ac0"},
	{"bilberry", "#3c3358", "#b1a9cf"},
}
