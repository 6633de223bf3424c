/** The inch, by the International Yard and Pound Agreement of 1959. */
export const MM_PER_INCH = 25.4;
/** Twelve of them. */
export const MM_PER_FOOT = 12 * MM_PER_INCH;
