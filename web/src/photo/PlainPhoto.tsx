import type { View } from '../../../server/schemas/sitting.ts';
import styles from './PlainPhoto.module.css';
import type { Box } from './points.ts';

const percent = (share: number) => `${100 * share}%`;

/**
 * A photo seen through the window `crop` (photo px), with nothing drawn on it and nothing heard: what stands beside it says it all. Cheap enough
 * for hundreds on one screen: it is fetched only when it comes near, and its width need not be known.
 */
export function PlainPhoto({
  view,
  crop,
  detail,
}: {
  view: Pick<View, 'pictureUrl' | 'widthPx' | 'heightPx'>;
  crop: Box;
  detail: 320 | 800;
}) {
  return (
    <div className={styles.window} style={{ aspectRatio: `${crop.width} / ${crop.height}` }}>
      <img
        src={`${view.pictureUrl}?width=${detail}`}
        alt=""
        loading="lazy"
        decoding="async"
        style={{
          marginLeft: percent(-crop.x / crop.width),
          // Of the width too: so percentages of margins are counted.
          marginTop: percent(-crop.y / crop.width),
          width: percent(view.widthPx / crop.width),
          aspectRatio: `${view.widthPx} / ${view.heightPx}`,
        }}
      />
    </div>
  );
}
