import { type ReactNode, useRef } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import styles from './Photo.module.css';
import type { Box } from './points.ts';
import { useWidth } from './use-width.ts';

/** A photo, shown through the window `crop` (photo px); `children` draw on it in photo px. */
export function Photo({
  view,
  crop,
  label,
  detail = 800,
  printedPx,
  children,
}: {
  view: Pick<View, 'pictureUrl' | 'widthPx' | 'heightPx'>;
  crop: Box;
  /** Empty where what stands beside the photo says it all: it is then not heard. */
  label: string;
  detail?: 320 | 800 | 1600;
  /** Its width in CSS px where it is printed only and so has none on the screen. */
  printedPx?: number;
  /** Draws the overlay; `unitPx` is the number of photo px in one CSS px. */
  children?: (unitPx: number) => ReactNode;
}) {
  const place = useRef<SVGSVGElement>(null);
  const shownPx = useWidth(place);
  const width = printedPx ?? shownPx;
  return (
    <svg
      ref={place}
      className={styles.photo}
      viewBox={`${crop.x} ${crop.y} ${crop.width} ${crop.height}`}
      style={{ aspectRatio: `${crop.width} / ${crop.height}` }}
      aria-hidden={label === ''}
      role={children ? 'group' : 'img'}
      aria-label={label}
    >
      <image
        href={`${view.pictureUrl}?width=${detail}`}
        width={view.widthPx}
        height={view.heightPx}
        preserveAspectRatio="none"
      />
      {width > 0 && children?.(crop.width / width)}
    </svg>
  );
}
