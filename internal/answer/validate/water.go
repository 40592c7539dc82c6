package validate

import (
	"math"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/water"
)

const iapws = "IAPWS R10-06 (Feistel & Wagner 2006) and IAPWS-95 (Wagner & Pruss 2002)"

func waterChecks() []check {
	return []check{func(t *tables) ([]Row, error) {
		activity := Row{Table: "ice_water_equilibrium (activity)", Source: iapws, Unit: "K", Bar: 0.01, Kind: Regression,
			XLabel: "°C", YLabel: "water activity of ice", Note: flaw.Say("The error is the temperature by which the activity is off.")}
		latent := Row{Table: "ice_water_equilibrium (latent heat)", Source: iapws, Unit: "%", Bar: 0.3, Kind: Independent,
			XLabel: "°C", YLabel: "heat of fusion, kJ/kg", Note: flaw.Say("Counted to −20 °C; heat capacities from Choi & Okos 1986.")}
		density := Row{Table: "ice_water_equilibrium (ice density)", Source: iapws, Unit: "%", Bar: 0.05, Kind: Independent,
			XLabel: "°C", YLabel: "density of ice, kg/m³", Note: flaw.Say("Choi & Okos 1986 against IAPWS.")}
		lines := t.read("ice_water_equilibrium")
		zero := lines[0].num("aw_ice") // 0.999976: the table's own 0 °C is not quite the melting point
		for _, l := range lines {
			at := l.num("T_C")
			got := water.LnIceActivity(at)
			want := math.Log(l.num("aw_ice") / zero)
			activity.addError(at, math.Exp(got), math.Exp(want), (got-want)/water.LnIceActivityPerK(at))
			why := ""
			if at < -20 {
				why = "colder than −20 °C, where measured heat capacities of water end"
			}
			latent.addRelative(at, water.LatentJPerG(at), l.num("L_kJ_kg")).named("", why)
			density.addRelative(at, water.IceKGPerM3(at), l.num("rho_ice"))
		}
		return []Row{activity, latent, density}, nil
	}}
}
