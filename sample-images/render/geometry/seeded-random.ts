/**
 * Chance by name: the same seed and keys always give the same number, whatever was asked before.
 *
 * A leaf's numbers hang on the leaf's own keys, so a plant a week older keeps every leaf it had.
 */
export interface Chance {
  /** A number in [0, 1) for these keys. */
  readonly uniform: (...keys: number[]) => number;
  /** A number in [low, high) for these keys. */
  readonly between: (low: number, high: number, ...keys: number[]) => number;
  /** A standard normal number (Box-Muller) for these keys. */
  readonly normal: (...keys: number[]) => number;
}

export function seededChance(seed: number): Chance {
  const uniform = (...keys: number[]): number => {
    let hash = mixBits(seed ^ 0x9e3779b9);
    for (const key of keys) hash = mixBits(hash ^ Math.imul(Math.floor(key) + 0x7f4a7c15, 0x85ebca6b));
    return hash / 4294967296;
  };
  return {
    uniform,
    between: (low, high, ...keys) => low + (high - low) * uniform(...keys),
    normal: (...keys) =>
      Math.sqrt(-2 * Math.log(1 - uniform(...keys, 1))) * Math.cos(2 * Math.PI * uniform(...keys, 2)),
  };
}

/** Scrambles 32 bits (the finaliser of MurmurHash3, A. Appleby 2011, public domain). */
export function mixBits(value: number): number {
  let bits = value | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}

/** Chance at a lattice point, in [0, 1): the fast form for use in every pixel. */
export function latticeChance(x: number, y: number, seed: number): number {
  return (
    mixBits(Math.imul(x, 374761393) ^ Math.imul(y, 668265263) ^ Math.imul(seed, 1274126177)) / 4294967296
  );
}

/** Smooth noise in [-1, 1] over the plane: lattice chances joined by the cubic 3t² − 2t³. */
export function smoothNoise(x: number, y: number, seed: number): number {
  const x0 = Math.floor(x);
  const y0 = Math.floor(y);
  const fx = x - x0;
  const fy = y - y0;
  const sx = fx * fx * (3 - 2 * fx);
  const sy = fy * fy * (3 - 2 * fy);
  const top = latticeChance(x0, y0, seed) * (1 - sx) + latticeChance(x0 + 1, y0, seed) * sx;
  const bottom = latticeChance(x0, y0 + 1, seed) * (1 - sx) + latticeChance(x0 + 1, y0 + 1, seed) * sx;
  return 2 * (top * (1 - sy) + bottom * sy) - 1;
}
