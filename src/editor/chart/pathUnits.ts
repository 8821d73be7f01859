/** Paths on the screen are in whole hundredths of a millimetre: short text, and fine enough for 20-fold enlargement. */
export const UNITS_PER_MM = 100;
