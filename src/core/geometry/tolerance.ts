/** The tolerances of the program: few, named, each with its unit and reason, never changed at run time. */

/** Two routes to one length agree to this, mm. Below 4 m a double steps by 5e-13 mm: room for 2000 roundings. */
export const SAME_LENGTH_MM = 1e-9;

/**
 * Two edges nearer than this, mm, are taken as touching, not crossing. A laser places a cut to about 0.05 mm and no
 * maker can see a micrometre: a crossing smaller than this is rounding, not a fault in the part.
 */
export const TOUCHING_MM = 1e-6;
