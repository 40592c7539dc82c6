package figure

// Origins that several figures share.
var (
	filling = Origin{
		Inputs:   "grams of the lines, overrun, tubs, fill and the share of foam",
		Equation: "volume of a phase = mass ÷ density; tubs = volume ÷ (volume of a tub × fill); the scarcer phase decides as written",
		Source:   "mass balance; volumes add: ASHRAE Refrigeration Handbook 2006, ch. 9",
		Band:     "as exact as the weighing, the stove and the overrun: 6 points of the stove loss and a fifth of the overrun either way, common practice, no source, or what your batches came to",
	}
	balance = Origin{
		Inputs:   "grams of each line, its composition, water driven off",
		Equation: "100 × Σ grams of it ÷ finished mass",
		Source:   "mass balance over the records' own sources (USDA FoodData Central and those named in the library)",
		Band:     "what the records leave open, the stove loss (6 points either way, common practice, no source, or what your batches came to) and, with a syrup, what published tables of its boil differ by",
	}
	records = Origin{
		Inputs:   "grams of each line, the figure of its record, water driven off",
		Equation: "Σ grams × figure per 100 g ÷ finished mass",
		Source:   "the records' own sources (USDA FoodData Central and those named in the library)",
		Band:     "from what is known to the most that the unknown can hold",
	}
	density = Origin{
		Inputs:   "composition and overrun",
		Equation: "1/ρ = Σ x/ρ at {4 °C}, with what is dissolved at its volume in solution; ÷ (1 + overrun)",
		Source:   "ASHRAE Refrigeration Handbook 2006, ch. 9; Choi & Okos 1986; sugars: CRC Handbook of Chemistry and Physics, 102nd ed. 2021; water: Kell 1975, J. Chem. Eng. Data 20:97",
		Band:     "the mix within about 0.5 %; the overrun a fifth either way, common practice, no source, or what your batches came to",
	}
	freezing = Origin{
		Inputs:   "water, each solute, minerals, water bound by protein and fibre",
		Equation: "water activity of the syrup = that of ice; each solute holds its own water at that activity and a mixture the sum",
		Source:   "constants fitted to the CRC Handbook of Chemistry and Physics, 102nd ed. 2021; sum: Stokes & Robinson 1966, J. Phys. Chem. 70:2126",
		Band:     "what the records leave open, the bound water, the stove loss and the syrup's boil",
	}
	ice = Origin{
		Inputs:   "as the freezing point, and the serving temperature",
		Equation: "ice = water − what the solutes hold liquid at the activity of ice at that temperature, down to the end of freezing",
		Source:   freezing.Source,
		Band:     "what the records leave open, the bound water, the stove loss and the syrup's boil; within about 2 points where all is known",
	}
	iceVolume = Origin{
		Inputs:   "the ice and the composition",
		Equation: "ice ÷ 0.917 over the sum of ice, liquid and solids by volume, air apart",
		Source:   "densities of the hardness model, part of its calibration: ice 0.917, sugars 1.60, fat 0.93, protein 1.33 g/mL; no source",
		Band:     ice.Band,
	}
	hardness = Origin{
		Inputs:   "ice by volume, the syrup's viscosity, overrun",
		Equation: "τ = (0.0105 e^(13.4 φ) + 0.01 η) (1 + overrun)^−1.5 + film, kPa; φ ice by volume without air, η Pa s",
		Source:   "anchored on Briggs, Steffe & Ustunol 1996, J. Dairy Sci. 79:527; air: Gibson & Ashby 1997, Cellular Solids; form after Wilbey, Cooke & Dimos 1998, from memory",
		Band:     "composition, bound water, the syrup's boil, its film, and a factor 2 between batches",
	}
	scooping = Origin{
		Inputs:   "the hardness at every temperature from {−24 to −4 °C}",
		Equation: "custard: from where it is 6 kPa to where it is 0.6; foam: from 6 to 0.1 kPa",
		Source:   "bands set on the scale of Briggs, Steffe & Ustunol 1996, J. Dairy Sci. 79:527; common practice, no source",
		Band:     "a factor 2 in hardness moves it by some {2 to 3 K}",
	}
	sweetness = Origin{
		Inputs:   "every sugar and sugar alcohol in the finished phase",
		Equation: "100 × Σ grams × relative sweetness ÷ mass, sucrose 1",
		Source:   "middle of published ranges: testdata/tables/relative_sweetness.csv, source of each row there",
		Band:     "published ranges are wide (fructose 1.2 to 1.7, glucose 0.5 to 0.8); mixes more than 0.5 apart taste different: Tharp & Young, On Ice Cream",
	}
	boil = Origin{
		Inputs:   "the syrup's lines, cook temperature, altitude; or the weight of the pan",
		Equation: "water activity × vapour pressure of water = air pressure at the altitude; or solids ÷ weighed mass",
		Source:   "Starzak & Peacock 1997, Zuckerindustrie 122:380–387; IAPWS-IF97, eq. 30; US Standard Atmosphere 1976",
		Band:     "published tables differ by 3 points of solids: Browne 1912; J. Cookery Sci. Japan 43(3); none where the pan is weighed; what your batches came to, where they tell",
	}
	slopes = Origin{
		Inputs:   "the phase, and what a gram of the line brings to it",
		Equation: "derivative of the figure along the line, at the serving temperature",
		Source:   "derived from the figure's own equation; tested against finite differences",
		Band:     "a tangent: good for small changes",
	}
)
