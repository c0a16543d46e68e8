/** A branch shorter than this share of the tree's depth is a zero twig: its ends are one point in time. */
export const zeroTwigShare = 1e-12;

/** Two values of the same thing agree to rounding below this relative difference. */
export const roundingShare = 1e-9;

/** Share of the largest weight under which a node of a numerical integral is dropped: its part cannot be printed. */
export const negligibleWeight = 1e-11;

/** Width, relative to the bracket's ends, at which root finding stops: the spacing of doubles. */
export const rootTolerance = 2.3e-16;
