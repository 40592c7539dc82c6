// Package photo answers what a photograph of a cut tub shows: how much of the cut is
// foam, and how thick its ribbons are, by the measure of package ripple.
//
// The outline of the cut in the picture and the tub's own millimetres straighten it. Two
// spots that a maker names give the colours of custard and foam; the light is evened out
// by what both phases show of it. A pixel's share of foam is then its place between the
// two colours in OKLab, read back to a mixture of their light, so that an edge lies where
// half of a pixel's light is foam's.
//
// A photograph shows one cut; its share of foam is not the tub's. What is thinner than
// the picture resolves is missed: the thickness is told from MinRibbonPixels on.
//
// A picture is read up to 50 megapixels, as far as its kind decodes within 112 MiB
// (mostPixels). In the window the largest take at their peak, while they are measured, 240 MB
// beyond its own 200 as JPEG, 50 megapixels, and 360 as PNG, 29; it gives them back.
//
// Sources: Heckbert 1989, Fundamentals of Texture Mapping and Image Warping, UCB/CSD
// 89/516, § 2.2.3 (the map of a square onto a quadrilateral; from memory); Ottosson
// 2020, A perceptual color space for image processing (OKLab).
package photo
