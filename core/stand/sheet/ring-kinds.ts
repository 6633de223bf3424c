/**
 * The three kinds of ring mark on the stand sheet. All are made of rings one unit wide, dark and light in turn, dark
 * outermost, on white paper; they differ in how many rings there are and in what lies in the middle.
 *
 * A unit is the same on every mark, so that all marks are lost to blur at the same distance, and no sooner.
 */
export const RING_KINDS = ['dot', 'eye', 'disc'] as const;
export type RingKind = (typeof RING_KINDS)[number];

/** Width of one ring, mm. */
export const RING_UNIT_MM = 8;

/** Where dark and light meet, in units from the centre, innermost first; outside the last one is paper. */
export const RING_EDGES: Readonly<Record<RingKind, readonly number[]>> = {
  /** dark middle, light ring, dark ring */
  dot: [1, 2, 3],
  /** light middle, dark ring, light ring, dark ring */
  eye: [1, 2, 3, 4],
  /** broad dark middle, light ring, dark ring */
  disc: [2, 3, 4],
};

/** Radius of the outermost edge, mm. */
export function ringRadiusMm(kind: RingKind): number {
  return (RING_EDGES[kind].at(-1) as number) * RING_UNIT_MM;
}

/** Whether the mark is dark at `units` from its centre. */
export function isDarkAt(kind: RingKind, units: number): boolean {
  return RING_EDGES[kind].filter((edge) => edge > units).length % 2 === 1;
}
