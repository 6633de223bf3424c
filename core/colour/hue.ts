/** Chroma ÷ (L* + 16): 0 for grey, about 0.5 for leaf green, 0.7 for yellow leaf; the same in any exposure. */
export function colourfulness(l: number, a: number, b: number): number {
  return Math.sqrt(a * a + b * b) / (l + 16);
}

/** Hue in degrees, -180 to 180. */
export function hueDeg(a: number, b: number): number {
  return (Math.atan2(b, a) * 180) / Math.PI;
}
