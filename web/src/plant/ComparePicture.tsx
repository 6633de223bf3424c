import type { View } from '../../../server/schemas/sitting.ts';
import { alignOn } from '../photo/alignment.ts';
import { fitAspect } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { boxAround, outlinePath, pointsOfInterest } from '../photo/points.ts';
import styles from './CompareSheet.module.css';

const MATCH_WORDS = {
  scale: 'The rims meet, and a millimetre is the same length in both.',
  rim: 'The rims meet at one width. That is right only if the pot is the same.',
  frame: 'No rim is known in one of the two, so only the edges of the photos meet: do not compare sizes.',
} as const;

/** `over` laid on `under` where their rims meet, with both outlines. */
export function ComparePicture({ under, over, strength }: { under: View; over: View; strength: number }) {
  const { scale, shiftX, shiftY, by } = alignOn(under, over);
  const moved = pointsOfInterest(over).map(([x, y]) => [x * scale + shiftX, y * scale + shiftY] as const);
  const photo = { x: 0, y: 0, width: under.widthPx, height: under.heightPx };
  const plants = boxAround([...pointsOfInterest(under), ...moved]);
  const room = plants ? Math.max(plants.width, plants.height) * 0.08 : 0;
  const crop = plants
    ? fitAspect(
        {
          x: plants.x - room,
          y: plants.y - room,
          width: plants.width + 2 * room,
          height: plants.height + 2 * room,
        },
        1,
        photo,
      )
    : photo;
  return (
    <div className={styles.picture}>
      <Photo view={under} crop={crop} detail={1600} label="The two photos over one another">
        {() => (
          <>
            <g transform={`translate(${shiftX} ${shiftY}) scale(${scale})`}>
              <image
                href={`${over.pictureUrl}?width=1600`}
                width={over.widthPx}
                height={over.heightPx}
                preserveAspectRatio="none"
                opacity={strength}
              />
              <path d={outlinePath(over.outlinePx)} className={styles.casing} />
              <path d={outlinePath(over.outlinePx)} className={styles.over} />
            </g>
            <path d={outlinePath(under.outlinePx)} className={styles.casing} />
            <path d={outlinePath(under.outlinePx)} className={styles.under} />
          </>
        )}
      </Photo>
      <p>{MATCH_WORDS[by]}</p>
    </div>
  );
}
