import styles from './Overlay.module.css';
import type { UnsureZone } from './outline-words.ts';
import { outlinePath } from './points.ts';

/** Hatches the zones that may be leaf or not: falling bars on a dark ground in a dotted edge. */
export function UnsureHatching({
  id,
  zones,
  unitPx,
}: {
  id: string;
  zones: readonly UnsureZone[];
  unitPx: number;
}) {
  return (
    <>
      <defs>
        <UnsureHatch id={`${id}-unsure`} unitPx={unitPx} />
      </defs>
      {zones.map((zone) => (
        <UnsureZoneShape key={zone.outlinePx[0]?.join()} id={id} zone={zone} />
      ))}
    </>
  );
}

/** The hatch as a pattern that keeps its width on the screen. */
export function UnsureHatch({ id, unitPx }: { id: string; unitPx: number }) {
  const spacing = 8 * unitPx;
  return (
    <pattern
      id={id}
      width={spacing}
      height={spacing}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(-45)"
    >
      <rect width={spacing} height={spacing} className={styles.unsureGround} />
      <rect width={spacing * 0.4} height={spacing} className={styles.unsureLine} />
    </pattern>
  );
}

/** One zone, filled with the hatch named `{id}-unsure`. */
export function UnsureZoneShape({ id, zone }: { id: string; zone: UnsureZone }) {
  const path = outlinePath(zone.outlinePx);
  return (
    <>
      <path d={path} fill={`url(#${id}-unsure)`} />
      <path d={path} className={styles.unsureCasing} />
      <path d={path} className={styles.unsureEdge} />
    </>
  );
}
