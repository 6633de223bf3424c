import { memo } from 'react';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import type { UnsureZone } from '../photo/outline-words.ts';
import { outlinePath } from '../photo/points.ts';
import { UnsureHatching } from '../photo/UnsureHatching.tsx';
import styles from './MendPicture.module.css';
import { StrokeBand, StrokeTrace } from './StrokeDrawing.tsx';

/** The photo with its outline, unsure zones and strokes: heard strokes as thin traces, unheard ones in full. */
export const MendPicture = memo(function MendPicture({
  id,
  view,
  strokes,
  heard,
  asked,
  unitPx,
}: {
  id: string;
  view: View;
  strokes: readonly Stroke[];
  heard: readonly Stroke[];
  /** The zone that is being asked about. */
  asked: UnsureZone | null;
  unitPx: number;
}) {
  const outline = outlinePath(view.outlinePx);
  return (
    <>
      <image
        href={`${view.pictureUrl}?width=1600`}
        width={view.widthPx}
        height={view.heightPx}
        preserveAspectRatio="none"
      />
      <UnsureHatching id={id} zones={view.drawing.unsure} unitPx={unitPx} />
      <path d={outline} className={styles.casing} />
      <path d={outline} className={styles.outline} data-testid="outline" />
      {asked && (
        <>
          <path d={outlinePath(asked.outlinePx)} className={styles.askedCasing} />
          <path d={outlinePath(asked.outlinePx)} className={styles.asked} />
        </>
      )}
      {strokes.map((stroke, index) => {
        const Drawing = heard.includes(stroke) ? StrokeTrace : StrokeBand;
        // biome-ignore lint/suspicious/noArrayIndexKey: strokes have no name, and their order is their meaning
        return <Drawing key={index} stroke={stroke} />;
      })}
    </>
  );
});
