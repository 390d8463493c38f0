/** A 10.1-inch tablet of 1280 × 800 CSS pixels: what a device counts as until it is calibrated. */
export const DEFAULT_PX_PER_MM = 5.88
