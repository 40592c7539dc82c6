// Package icy answers how icy a design eats: how big its ice crystals are when it
// is hardened, and what weeks in this freezer make of them.
//
// It rides on a computed plan of the cold: the custard's dish, the filled tub's
// cells, the counter. Sizes are mean diameters, µm; temperatures °C; times
// minutes, days or weeks as named. The rate law and its sources are package
// ice's.
//
// # What is computed
//
// Seeds of 15 µm ripen in the mush until the last beat, or as long as a churn
// takes. From then on nothing new forms: ice grows on the crystals that there
// are, in the tub cell by cell, and they ripen. In storage they ripen at the
// freezer's temperature, its swing and its openings as far as they reach wall and
// core. One outing to the counter is told apart.
//
// # What is not
//
// Breakage by the beaters, crystals that grow together, yolk's and starch's own
// effect; gums count by one published factor. No measured size of a beaten or
// home-churned custard was found: what the freezing leaves rests on argument, and
// its band says so. Nothing here is a time of keeping.
package icy
