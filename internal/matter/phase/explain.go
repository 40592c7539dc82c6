package phase

// Standing says how much a statement of Explanation can be leaned on.
type Standing string

// The standings.
const (
	Measured    Standing = "measured"
	Computed    Standing = "computed"
	Convenience Standing = "a scale of convenience"
	Open        Standing = "not settled"
)

// Explanation is what a maker may want to know about where the hardness and
// the ice come from, in the order in which to read it. Quantities stand in braces.
var Explanation = [...]struct {
	Standing Standing
	Text     string
}{
	{Measured, "Freezing points of the sugars, salts and alcohol, to a few hundredths of a degree (CRC Handbook); of milk, egg and mixes, to a twentieth."},
	{Measured, "What each factor does: more ice and bigger crystals harden, air and warmth soften (Muse & Hartel 2004; Sofjan & Hartel 2004; Inoue et al. 2009). Commercial ice cream at {−16 to −14 °C} resists a vane with 2.5 to 8 kPa (Briggs, Steffe & Ustunol 1996)."},
	{Computed, "How much of the water is ice at a temperature: from the measured freezing points, carried on to colder syrups than were measured. Expect it within about 2 points in a hundred."},
	{Computed, "The syrup between the crystals is taken as thick as sucrose at the same solids, and below {0 °C} its thickness is an extrapolation. Glucose and fructose are up to a third thinner, which matters only where there is little ice, in the foam; the band of the hardness reaches down to that."},
	{Convenience, "The hardness in kPa. Its law has the right directions and is anchored on the vane measurements; that one number describes a spoon is our choice. One recipe made in 23 ways was measured to scatter by a factor 1.6, so read a word with a band of a factor 2 either way, and compare recipes that you make the same way."},
	{Convenience, "The words for the spoon: their limits are set at the states the trade knows, drawing from the freezer, the dipping cabinet, storage."},
	{Open, "Water that protein and fibre keep from freezing: the largest freedom left, up to 3 points of frozen water and a factor 1.3 in hardness. No published freezing point decides it, so it is a setting and part of the band."},
	{Open, "How sugars and much added salt freeze together: two published rules differ by 1 to 2 points above 1 g of salt in 100 g of water."},
	{Open, "Crystal size: coarse ice of a mix frozen still is harder than this number says."},
}
