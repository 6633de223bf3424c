import { useId } from 'react';
import { moved } from '../../../core/stand/frame/similarity.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { fitAspect } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { boxAround, outlinePath, pointsOfInterest } from '../photo/points.ts';
import styles from './CompareSheet.module.css';
import { layOn } from './lay-on.ts';

const MATCH_WORDS = {
  stand: 'What stands still in the picture meets in both.',
  scale: 'The rims meet, and a millimetre is the same length in both.',
  rim: 'The rims meet at one width. That is right only if the pot is the same.',
  frame: 'No rim is known in one of the two, so only the edges of the photos meet: do not compare sizes.',
} as const;

/** How two photos are shown in one: mixed, or one up to an upright edge and the other beyond it. */
export type CompareWay = 'wipe' | 'blend';

/**
 * `over` laid on `under`.
 *
 * @param share how much of `over` is seen, 0–1: from the left up to the edge, or as clear as that
 */
export function ComparePicture({
  under,
  over,
  way,
  share,
  outlines,
}: {
  under: View;
  over: View;
  way: CompareWay;
  share: number;
  outlines: boolean;
}) {
  const id = useId();
  const { move, by } = layOn(under, over);
  const places = pointsOfInterest(over).map((point) => moved(move, point));
  const photo = { x: 0, y: 0, width: under.widthPx, height: under.heightPx };
  const plants = boxAround([...pointsOfInterest(under), ...places]);
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
  const edge = crop.x + share * crop.width;
  const matrix = `matrix(${move.a} ${move.b} ${-move.b} ${move.a} ${move.shiftX} ${move.shiftY})`;
  return (
    <div className={styles.picture}>
      <Photo view={under} crop={crop} detail={1600} label="The two photos in one">
        {() => (
          <>
            {way === 'wipe' && (
              <clipPath id={id}>
                <rect x={crop.x} y={crop.y} width={edge - crop.x} height={crop.height} />
              </clipPath>
            )}
            <g clipPath={way === 'wipe' ? `url(#${id})` : undefined}>
              <image
                href={`${over.pictureUrl}?width=1600`}
                width={over.widthPx}
                height={over.heightPx}
                preserveAspectRatio="none"
                transform={matrix}
                opacity={way === 'blend' ? share : 1}
              />
            </g>
            {outlines && (
              <>
                <g transform={matrix}>
                  <path d={outlinePath(over.outlinePx)} className={styles.casing} />
                  <path d={outlinePath(over.outlinePx)} className={styles.over} />
                </g>
                <path d={outlinePath(under.outlinePx)} className={styles.casing} />
                <path d={outlinePath(under.outlinePx)} className={styles.under} />
              </>
            )}
            {way === 'wipe' && (
              <>
                <path d={`M${edge} ${crop.y}v${crop.height}`} className={styles.casing} />
                <path d={`M${edge} ${crop.y}v${crop.height}`} className={styles.edge} />
              </>
            )}
          </>
        )}
      </Photo>
      <p>{MATCH_WORDS[by]}</p>
    </div>
  );
}
