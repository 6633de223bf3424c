import type { PhotoReport } from '../../../core/report.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import type { Plate } from './free-place.ts';
import { yellowLabel, yellowTold } from './leaf-words.ts';
import styles from './Overlay.module.css';
import { type Box, boxAround, outlinePath } from './points.ts';
import { Tappable } from './Tappable.tsx';
import type { ZoneToName } from './zone-labels.ts';

type Zone = NonNullable<PhotoReport['foliage']>['where'][number];

/** So many zones get a label; all are drawn and can be tapped. */
const MOST_LABELS = 3;

/** The zones to be named on the photo, the largest first. */
export function yellowToName({ foliage }: PhotoReport): ZoneToName[] {
  return (foliage?.where ?? []).slice(0, MOST_LABELS).map((zone) => ({
    words: yellowLabel(zone),
    centrePx: zone.centrePx,
    reachPx: reachOf(zone),
  }));
}

/** The room that the zones take on the photo, which no name should cover. */
export function yellowRoom({ foliage }: PhotoReport): Plate[] {
  return (foliage?.where ?? []).flatMap(({ outlinePx }) => {
    const box = boxAround(outlinePx);
    return box ? [{ at: [box.x + box.width / 2, box.y + box.height / 2] as const, size: box }] : [];
  });
}

function reachOf({ outlinePx, centrePx: [x, y] }: Zone): readonly [number, number] {
  const box = boxAround(outlinePx);
  if (!box) return [0, 0];
  return [Math.max(x - box.x, box.x + box.width - x), Math.max(y - box.y, box.y + box.height - y)];
}

/** Yellow leaf where it stands: level bars in a full edge, the largest zones named. */
export function YellowZones({
  id,
  report,
  plates,
  crop,
  unitPx,
  onTell,
}: {
  id: string;
  report: PhotoReport;
  /** Of the zones to be named, in their order; `null` where no place was free. */
  plates: readonly (Plate | null)[];
  crop: Box;
  unitPx: number;
  onTell: (words: string) => void;
}) {
  const spacing = 6 * unitPx;
  return (
    <>
      <defs>
        <pattern id={`${id}-yellow`} width={spacing} height={spacing} patternUnits="userSpaceOnUse">
          <rect width={spacing} height={spacing} className={styles.yellowGround} />
          <rect width={spacing} height={spacing * 0.34} className={styles.yellowLine} />
        </pattern>
      </defs>
      {report.foliage?.where.map((zone) => {
        const path = outlinePath(zone.outlinePx);
        return (
          <Tappable key={zone.centrePx.join()} words={yellowTold(zone, report)} onTell={onTell}>
            <path d={path} fill={`url(#${id}-yellow)`} />
            <path d={path} className={styles.yellowCasing} />
            <path d={path} className={styles.yellowEdge} />
            <path d={path} className={styles.reach} />
          </Tappable>
        );
      })}
      {/* Over all zones, so that no hatching lies on a name. */}
      {report.foliage?.where.map((zone, at) => {
        const plate = plates[at];
        if (!plate) return null;
        const leader = `M${zone.centrePx.join(' ')}L${plate.at.join(' ')}`;
        return (
          <g key={zone.centrePx.join()} className={styles.name}>
            <path d={leader} className={styles.leaderCasing} />
            <path d={leader} className={styles.yellowLeader} />
            <DrawnLabel at={plate.at} words={yellowLabel(zone)} crop={crop} unitPx={unitPx} />
          </g>
        );
      })}
    </>
  );
}
