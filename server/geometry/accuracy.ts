/** The few accuracies that the geometry is worked to, each with what it trades. */

/**
 * Accuracy of arc lengths, in millimetres. A cutter works to half a millimetre and a seam is compared to a
 * tenth, so 1e-9 is far below anything that shows; it is chosen so that sums over a hundred edges, and
 * differences of nearly equal lengths, still print the same digits on every machine. Larger (1e-6) would save
 * about a third of the time of a length; smaller (1e-12) meets the rounding of coordinates a few metres from
 * the origin and buys nothing.
 */
export const DEFAULT_ACCURACY = 1e-9;

/**
 * Two curves that come this near (millimetres) are taken to touch. Circles drawn as chains of cubics are up to
 * 5e-10 of their radius out, so a line meant to be tangent to a one-metre circle must still be seen to touch.
 * Larger would join crossings that are truly two; smaller would lose tangencies after a few constructions.
 */
export const TOUCH = 1e-6;

/** Points nearer than this (millimetres) are one point: the rounding of a dozen constructions, no more. */
export const SAME_POINT = 1e-9;

/**
 * How far a curve that replaces another (a parallel, a cutting line) may stray from it, in millimetres: a
 * hundredth, a tenth of the thinnest printed line. Smaller costs more pieces, about the fourth root of the ratio.
 */
export const FIT_TOLERANCE = 0.01;
