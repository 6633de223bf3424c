/** A User Timing mark (W3C) of this name stands when all that is needed without a network has been fetched. */
export const AT_HAND = 'rondure at hand';
