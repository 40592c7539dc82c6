// Package heat answers how the temperature inside a body changes with time: a
// tub hardening in a freezer, softening on a counter, a dish stirred while it
// freezes.
//
// Temperatures are °C, times s, lengths m, volumetric enthalpies J/m³,
// coefficients W/(m² K). It knows no food: a Material is two curves, enthalpy
// and conductivity over temperature, that the caller provides. It does not know
// motion (stirring apart), moisture, or a material that differs from place to
// place. Tables are never extrapolated: what lies outside is a *RangeError.
//
// # Method
//
// Finite volumes on an upright cylinder, a slab or a sphere. The unknown is the
// enthalpy u of a cell, so latent heat needs no special care; heat flows by
// differences of the Kirchhoff potential φ = ∫k dT, so a moving front does not
// lag behind the mesh; both come from one table uniform in u. What leaves a cell
// enters its neighbour, and the heat through the faces is integrated with the
// same stages, so Balance closes to rounding. Cells may be thinner towards the
// faces (Graded, Tub). The wall's temperature is that of the surface itself, from
// the flux that the half cell behind it and the face's coefficient agree on.
//
// Time steps are those of a linearly implicit Rosenbrock method of second order
// on an operator split by direction (see stepper.try), with an error estimate
// and step control. On 15 × 30 even cells a pint's slowest cell and mean agree with
// a fine reference of other make within 0.05 % in hardening and 0.3 % on the
// counter, the outer 10 mm within 0.7 % (pure foam on the counter 1.8 %); but even
// cells grow with the tub, to 23 and 89 % of the ring's time at 20 L. Tub's do not.
//
// Steps grow long where the material is smooth. A substance that freezes within
// a few hundredths of a kelvin on cells below a millimetre costs thousands.
//
// # Schemes compared
//
// A pint of custard from −5 °C, 16 h at −18 °C in still air; error of the
// hottest cell's time to −15 °C against the converged time on the same mesh;
// right-hand sides evaluated; one core of a busy shared 2-core machine, best of
// 80. BenchmarkSchemes repeats it, BenchmarkHardening16h shows the growth with
// cells and BenchmarkGrowthWithHours that with hours.
//
//	                               10 × 20 cells             15 × 30 cells
//	RKL2, fixed step 120 s         -0.002 %  2706  3.6 ms    -0.001 %  3816  10.1 ms
//	RKL2, fixed step 300 s         -0.001 %  1562  1.9 ms    +0.003 %  2248   5.7 ms
//	RKL2, fixed step 600 s         +0.009 %  1084  1.3 ms    +0.011 %  1576   3.8 ms
//	RKL2, fixed step 1200 s        -0.168 %   730  0.9 ms    +0.052 %  1078   2.5 ms
//	RKL2, adaptive, 3e-4           +0.006 %  1203  1.7 ms    -0.041 %  1889   5.3 ms
//	RKL2, adaptive, 1e-4           +0.005 %  1514  2.2 ms    -0.004 %  2409   7.1 ms
//	Rosenbrock, banded, 1e-3       +0.023 %   156  2.2 ms    -0.023 %   170   8.7 ms
//	Rosenbrock, banded, 1e-4       -0.003 %   500  7.3 ms    -0.003 %   564  28.9 ms
//	Rosenbrock, split, 3e-4        +0.012 %   316  1.0 ms    +0.005 %   332   2.1 ms
//	Rosenbrock, split, 1e-4        +0.004 %   542  1.6 ms    +0.007 %   576   3.6 ms
//
// A fixed super-time-step does well once its length has been guessed for the
// case at hand; the split Rosenbrock step needs no guess and is the fastest at
// equal error, because a step costs two sweeps of tridiagonal systems instead
// of a band factorisation. The default tolerance is 3e-4.
package heat
