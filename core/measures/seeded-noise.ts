/** Numbers that look like noise but are the same on every run, so a report never changes by itself. */
export interface SeededNoise {
  /** Next value of a standard normal distribution. */
  readonly normal: () => number;
}

/**
 * A fixed stream of normal numbers.
 *
 * @param seed any whole number; the same seed gives the same stream
 *
 * Reference: mulberry32 by T. Ettinger (public domain, from memory) for the uniform numbers; Box and Muller (1958), A note on the
 * generation of random normal deviates.
 *
 * Example: `seededNoise(1).normal()` is the same number for ever.
 */
export function seededNoise(seed: number): SeededNoise {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}
