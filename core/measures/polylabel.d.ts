declare module 'polylabel' {
  /** Rings: the outer one first, then its holes. The point carries its distance from the nearest edge. */
  export default function polylabel(
    rings: readonly (readonly (readonly [number, number])[])[],
    precision?: number,
  ): [number, number] & { distance: number };
}
