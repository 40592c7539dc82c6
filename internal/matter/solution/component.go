package solution

// Component is one class of solids: A + B·t + C·t², t in °C, for the
// conductivity (W/(m K)), density (kg/m³) and heat capacity (kJ/(kg K)).
type Component struct{ WPerMK, KGPerM3, JPerGK [3]float64 }

// Components are the solids that are not dissolved sugars.
//
// Source: Choi & Okos 1986, in Food Engineering and Process Applications vol.
// 1, pp. 93–101; reprinted in ASHRAE Refrigeration Handbook 2006, ch. 9, tables
// 1 and 2; −40 to 150 °C. See testdata/tables/choi_okos_components.csv.
// Ethanol, undiluted at about 0 °C, is from memory.
var Components = struct{ Protein, Fat, Carbohydrate, Fibre, Ash, Ethanol Component }{
	Protein:      Component{[3]float64{0.17881, 1.1958e-3, -2.7178e-6}, [3]float64{1329.9, -0.51840}, [3]float64{2.0082, 1.2089e-3, -1.3129e-6}},
	Fat:          Component{[3]float64{0.18071, -2.7604e-4, -1.7749e-7}, [3]float64{925.59, -0.41757}, [3]float64{1.9842, 1.4733e-3, -4.8008e-6}},
	Carbohydrate: Component{[3]float64{0.20141, 1.3874e-3, -4.3312e-6}, [3]float64{1599.1, -0.31046}, [3]float64{1.5488, 1.9625e-3, -5.9399e-6}},
	Fibre:        Component{[3]float64{0.18331, 1.2497e-3, -3.1683e-6}, [3]float64{1311.5, -0.36589}, [3]float64{1.8459, 1.8306e-3, -4.6509e-6}},
	Ash:          Component{[3]float64{0.32962, 1.4011e-3, -2.9069e-6}, [3]float64{2423.8, -0.28063}, [3]float64{1.0926, 1.8896e-3, -3.6817e-6}},
	Ethanol:      Component{[3]float64{0.171}, [3]float64{806, -0.85}, [3]float64{2.30}},
}

// At returns a property of Component at t °C.
func At(c [3]float64, t float64) float64 { return c[0] + t*(c[1]+t*c[2]) }
