import { outlinePath } from '../photo/points.ts';
import styles from './LiveCamera.module.css';
import { crossPath, type LayOver, windowOfVideo } from './lay-over.ts';

/** The last outline, the rim and the stand's marks, drawn in the place where the live picture should show them. */
export function LayOverDrawing({
  layOver,
  video,
  strength,
  ghost,
}: {
  layOver: LayOver;
  video: { readonly width: number; readonly height: number };
  strength: number;
  /** Whether the stand's own picture lies over, too. */
  ghost: boolean;
}) {
  const shown = windowOfVideo(layOver, video);
  const outline = outlinePath(layOver.outlinePx);
  const half = layOver.widthPx * 0.018;
  const { rim } = layOver;
  return (
    <svg
      className={styles.layOver}
      viewBox={`${shown.x} ${shown.y} ${shown.width} ${shown.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      data-testid="lay-over"
    >
      {ghost && (
        <image
          href={`${layOver.photoUrl}?width=1600`}
          width={layOver.widthPx}
          height={layOver.heightPx}
          preserveAspectRatio="none"
          opacity={strength * 0.6}
        />
      )}
      <g opacity={0.3 + strength * 0.7}>
        {outline && <path d={outline} className={styles.silhouette} fillOpacity={strength * 0.45} />}
        {outline && <path d={outline} className={styles.casing} />}
        {outline && <path d={outline} className={styles.outline} />}
        {rim && (
          <>
            <path d={rimPath(rim, half)} className={styles.casing} />
            <path d={rimPath(rim, half)} className={styles.rim} />
          </>
        )}
        {layOver.marksPx.map((mark) => (
          <g key={mark.join()}>
            <circle cx={mark[0]} cy={mark[1]} r={half} className={styles.casing} />
            <path d={crossPath(mark, half * 1.5)} className={styles.casing} />
            <circle cx={mark[0]} cy={mark[1]} r={half} className={styles.mark} />
            <path d={crossPath(mark, half * 1.5)} className={styles.mark} />
          </g>
        ))}
      </g>
    </svg>
  );
}

function rimPath({ leftPx, rightPx }: NonNullable<LayOver['rim']>, half: number): string {
  const tick = ([x, y]: readonly [number, number]) => `M${x} ${y - half}V${y + half}`;
  return `M${leftPx.join(' ')}L${rightPx.join(' ')}${tick(leftPx)}${tick(rightPx)}`;
}
