package limits

// Works that several steps rest on.
const (
	mcGee  = "McGee 2004, On Food and Cooking"
	trade  = "common practice, no source"
	ownSum = "computed with this program's freezing model"
	boiled = "open boiling of a dilute solution, alcohol left = (water left)^12, the exponent from memory (testdata/tables/ethanol_retention.csv): nothing at 118 °C"
)

// The custard's air, % overrun, by what churns it.
var (
	// CustardAir is for a custard of which nobody said how it is churned: what
	// hands reach at best.
	CustardAir = Limit{"air_beyond_process", "overrun of the custard, churned at home or by hand", "%", false, []Step{
		{Note, 20, InText, "overrun_french_handmade", mcGee + ", table of typical compositions: French (handmade) 0 to 20 %"},
		{Warn, 40, InText, "overrun_hand_cranked", "Woman's Institute Library of Cookery, vol. 4, table I: hand-cranked custard swells 25 to 40 %"},
		{Stop, 60, InText, "overrun_soft_serve", mcGee + ", same table: soft-serve machines reach 30 to 60 %, more is a factory's"},
	}}
	TrayAir = Limit{"air_beyond_process", "overrun of the custard, frozen in a tray and beaten", "%", false, []Step{
		{Note, 15, Memory, "", trade},
		{Warn, 25, Memory, "overrun_tray", trade},
		CustardAir.Steps[2],
	}}
	FrozenBowlAir = Limit{"air_beyond_process", "overrun of the custard, churned in a frozen bowl", "%", false, []Step{
		{Note, 25, Memory, "", "a little above the one batch measured, 900 mL to 1090 mL or 21 % (a tester's page, 2017)"},
		{Warn, 35, Memory, "", trade},
		CustardAir.Steps[2],
	}}
	BatchFreezerAir = Limit{"air_beyond_process", "overrun of the custard, from a shop's batch freezer", "%", false, []Step{
		{Note, 45, Secondary, "overrun_batch_freezer", "a page citing Ferrari 2011: 35 to 45 % in gelato on average"},
		CustardAir.Steps[2],
	}}
)

// FoamAir is the overrun of the finished foam. White whipped alone takes six
// to eight times its room, 500 to 700 %; sugar leaves less.
var FoamAir = Limit{"air_beyond_process", "overrun of the foam", "%", false, []Step{
	{Note, 400, Memory, "", "Italian meringue 250 to 400 %: from memory, no measurement found"},
	{Warn, 500, Memory, "", "French meringue 300 to 500 %: from memory, no measurement found"},
	{Stop, 700, InText, "overrun_white_alone", mcGee + ": white alone, whipped to eight times its volume"},
}}

// Yolk is g egg yolk per kg of the phase.
var Yolk = Limit{"yolk_heavy", "egg yolk in the custard", "g/kg", false, []Step{
	{Note, 155, InText, "yolk_french_most", mcGee + ": as many as 12 yolks to the litre of milk or cream, the richest French custard"},
	{Warn, 180, Memory, "", trade + "; tasters begin to say eggy from 120 to 150 g/kg, no panel found"},
}}

// Sweetness, % sucrose equivalent by mass. The trade's own range is
// phase.TradeSweetness.
var (
	SweetCustard = Limit{"too_sweet", "sweetness of the custard", "%", false, []Step{
		{Note, 20, InText, "sugar_french_handmade", mcGee + ", table of typical compositions: sugar in French (handmade) 15 to 20 %"},
		{Warn, 21, Memory, "", trade + "; sugar of low-fat ice cream, the sweetest that is no sherbet, ends at 21 % in McGee 2004"},
	}}
	SweetTub = Limit{"too_sweet", "sweetness of the whole tub", "%", false, []Step{
		{Note, 24, Memory, "", trade},
		{Warn, 28, Memory, "", trade},
	}}
	FlatCustard = Limit{"not_sweet_enough", "sweetness of the custard", "%", true, []Step{
		{Note, 12, Memory, "", trade},
		{Warn, 10, Memory, "sweetness_too_low", trade},
	}}
)

// Salt is g of sodium chloride added to a phase per kg of it.
var Salt = Limit{"too_salty", "salt added to the phase", "g/kg", false, []Step{
	{Note, 8, Memory, "salt_caramel", trade + ": salted caramel takes 4 to 8 g/kg"},
	{Warn, 10, Memory, "salt_too_much", trade},
}}

// FreezerLoad is the heat to take out in a day over what the freezer is rated
// for: rated kg × TestLoadKJPerKg.
var FreezerLoad = Limit{"freezer_overloaded", "heat of the load over a day's rated heat", "", false, []Step{
	{Note, 0.5, Computed, "", "half of what the four-star rating promises"},
	{Warn, 1, Computed, "", "what the four-star rating promises"},
	{Stop, 2, Computed, "", "twice what the four-star rating promises, and more than any household rule allows (Univ. of Minnesota Extension 2017, Ohio State Extension 2023: 3.2 to 4.8 kg per 100 L)"},
}}

// What FreezerLoad divides by.
const (
	// RatedKgPer100L is the least that a four-star freezer takes from room
	// temperature to −18 °C in 24 h, and RatedLeastKg the least of any: EU
	// definition of the four-star compartment, read in German and Dutch (text of
	// Regulation 643/2009 or 1060/2010; that 2019/2019 keeps it is from memory).
	RatedKgPer100L = 4.5
	RatedLeastKg   = 2.0
	// TestLoadKJPerKg is the heat of the rating's test load (from memory).
	TestLoadKJPerKg = 345.0
)

// SyrupDepth is how deep the boiled syrup stands in the smallest common pan,
// see SyrupDepthMM.
var SyrupDepth = Limit{"syrup_too_little", "depth of the syrup in a pan of 12 cm", "mm", true, []Step{
	{Note, 12, Memory, "thermometer_digital", "from memory: a digital thermometer senses in the last 12 to 15 mm of its tip"},
	{Warn, 3, Memory, "", "from memory: in a tilted pan syrup stands about four times as deep, so this still covers such a tip"},
}}

// YolkInWhite is g of yolk per 100 g of egg white in the foam.
var YolkInWhite = Limit{"yolk_in_whites", "yolk in the whites", "%", false, []Step{
	{Note, 0, InText, "", mcGee + ": traces make a foam slower to rise and less light; no curve read"},
	{Warn, 0.15, Memory, "", "a drop (0.05 g) in one white of 33 g, which took the foam from about 135 to 40 mL (St. John & Flor 1931, as remembered)"},
}}

// UnnamedCarbohydrate is g of carbohydrate that no figure names per 100 g of
// the phase: 2 g of it, if it is a simple sugar, lower the freezing point of a
// custard with 60 g of water by 0.35 K.
var UnnamedCarbohydrate = Limit{"carbohydrate_unnamed", "carbohydrate that no figure names", "g/100 g", false, []Step{
	{Note, 0.5, Computed, "", ownSum},
	{Warn, 2, Computed, "", ownSum},
}}

// Alcohol, g per 100 g.
var (
	// AlcoholInSyrup is of the syrup's lines: under 1 % of it is left where a
	// third of the water boils off.
	AlcoholInSyrup = Limit{"alcohol_boils_off", "alcohol boiled with the syrup", "%", false, []Step{
		{Note, 0, Computed, "", boiled},
		{Warn, 0.5, Computed, "", boiled},
	}}
	// AlcoholOnStove is of the custard's lines where water is cooked off.
	AlcoholOnStove = Limit{"alcohol_boils_off", "alcohol cooked with the custard", "%", false, []Step{
		{Note, 0.5, Secondary, "", "USDA Table of Nutrient Retention Factors 6 (2007), as two pages quote it (testdata/tables/ethanol_retention.csv): 40 % left after 15 min of simmering"},
	}}
	// AlcoholTold is the alcohol of the finished food from which name, label and
	// card tell of it, and that it is not for children.
	AlcoholTold = Limit{"alcohol_told", "alcohol of the finished food", "%", false, []Step{
		{Note, 0.5, Memory, "", trade},
	}}
)

// Acid, g citric acid equivalent per kg of milk in the phase, a kg of cream
// counting as a quarter of one.
var (
	AcidHot = Limit{"acid_with_milk", "acid heated with milk", "g/kg", false, []Step{
		{Warn, 0.5, Computed, "hot_milk_acid", "half of the weakest curdling dose on kitchen pages on fresh cheese, 15 mL lemon juice per litre"},
		{Stop, 2, Computed, "", "near the weakest dose of citric acid that makes fresh cheese, 2.5 g per litre at the boil (kitchen pages)"},
	}}
	AcidCold = Limit{"acid_with_milk", "acid whisked into the cold custard", "g/kg", false, []Step{
		{Note, 3, Memory, "", trade},
		{Warn, 8, Memory, "", trade},
	}}
)

// Starch beside yolk.
var (
	// StarchWithYolk is g of starch per kg of the custard where yolk is in it
	// and nobody says that it is boiled.
	StarchWithYolk = Limit{"starch_with_yolk", "starch beside yolk in the custard", "g/kg", false, []Step{
		{Note, 1, InText, "", mcGee + ": a yolk's enzyme thins a starch cream that has not boiled"},
		{Warn, 5, Memory, "starch_frozen_base", trade + ": from 5 g/kg a frozen base counts on its starch"},
	}}
	// StarchPeak is the custard's highest temperature with starch and yolk in it.
	StarchPeak = Limit{"starch_with_yolk", "hottest of a custard with starch and yolk", "°C", true, []Step{
		{Warn, 95, InText, "yolk_enzyme_dead", mcGee + "; French Culinary Institute; Figoni 2003: a full boil"},
		{Stop, 88, Secondary, "", "a pastry page: the enzyme weakens only above 88 °C"},
	}}
)

// AltitudeFromM is from where on a syrup's temperature must be told for the
// place: water boils 1.0 K lower there.
const AltitudeFromM = 300

// Altitude is the limit of it, which is told at the bound itself too.
var Altitude = Limit{"altitude_syrup", "height of the kitchen", "m", false, []Step{
	{Note, AltitudeFromM, Computed, "", "standard atmosphere (ISO 2533) and the boiling of water: 1.0 K in 300 m"},
}}

// All lists every limit.
var All = []*Limit{
	&CustardAir, &TrayAir, &FrozenBowlAir, &BatchFreezerAir, &FoamAir, &Yolk, &SweetCustard, &SweetTub, &FlatCustard, &Salt,
	&FreezerLoad, &SyrupDepth, &YolkInWhite, &UnnamedCarbohydrate, &AlcoholInSyrup, &AlcoholOnStove, &AlcoholTold,
	&AcidHot, &AcidCold, &StarchWithYolk, &StarchPeak, &Altitude,
}
