// Package ripple says what a tub of two stirred phases looks like when it is
// cut: where the foam lies, how thick its ribbons are, and what a spoon finds.
//
// The cut is not a decoration. It starts as a layout (see Layout) whose share
// of foam is exact, and every stroke of the spoon handle is a map of the cut
// onto itself that keeps area, so stirring can neither make nor lose foam. A
// stroke is either a compact twist (closed form, see Twist) or the flow of a
// stream function that vanishes on the walls, integrated by fourth-order
// Runge–Kutta.
//
// What is held: the foam's share of the area of the cut equals the foam's share
// of the volume of the tub. For the view from above that is the volume of a thin
// slice. For the side cut it takes the cut to stand for the tub, as a cut through
// a box does; in a round tub the rim is more of the volume than of the cut, so a
// turned copy of the picture would not have the same share, and is not meant.
//
// The strokes are flat motions of a uniform liquid: no third dimension, no
// difference in stiffness or density between the phases, and no air. Air lost to
// overmixing is not modelled, which is one reason why strokes are capped at
// MaxStrokes; the other is that beyond it the ribbons are thinner than any eye or
// pixel.
//
// In a dish filled flatter than it is wide a level stroke carries the less far, and
// all strokes shear the cut more than they lift it: there is no height for more. Part
// of what really moves there goes round the handle, out of the cut.
//
// Lengths are millimetres, shares are fractions of 1. Both phases are at the
// volume they have in the tub. Points of a cut have their origin at the lower
// left corner of the box around it: x to the right, y up (side) or away (top).
//
// The same Settings give the same picture. Between kinds of processor the last
// bits of a float may differ, which moves a channel of a pixel by a step at most.
//
// Sources: J. M. Ottino, The Kinematics of Mixing: Stretching, Chaos, and
// Transport, Cambridge University Press 1989 (area-preserving maps, thinning;
// from memory); S. Lu, A. Jaffer, X. Jin, H. Zhao and X. Mao, Mathematical
// Marbling, IEEE Computer Graphics and Applications 32(6), 2012 (tine lines).
package ripple
