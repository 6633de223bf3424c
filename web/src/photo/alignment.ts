import type { View } from '../../../server/schemas/sitting.ts';

/** How the photo of one sitting is moved to lie on that of another: new = old × scale + shift. */
export interface Alignment {
  readonly scale: number;
  readonly shiftX: number;
  readonly shiftY: number;
  /** What the two were matched by; `frame` means only by the edges of the photo. */
  readonly by: 'scale' | 'rim' | 'frame';
}

/**
 * Lays `over` on `under`. With scale and rim known in both, a millimetre is the same length in both and the
 * rims meet; with the rim alone, the rims are brought to one width (right only in the same pot); else the
 * two frames are.
 */
export function alignOn(under: View, over: View): Alignment {
  const [ground, moved] = [under.report, over.report];
  if (!ground?.axis || !moved?.axis) {
    return { scale: under.widthPx / over.widthPx, shiftX: 0, shiftY: 0, by: 'frame' };
  }
  const byScale = ground.scale && moved.scale ? moved.scale.mmPerPx / ground.scale.mmPerPx : null;
  const scale = byScale ?? rimWidth(ground.axis) / rimWidth(moved.axis);
  return {
    scale,
    shiftX: ground.axis.xPx - moved.axis.xPx * scale,
    shiftY: rimHeight(ground.axis) - rimHeight(moved.axis) * scale,
    by: byScale === null ? 'rim' : 'scale',
  };
}

type Rim = NonNullable<NonNullable<View['report']>['axis']>;

function rimWidth({ rimLeftPx, rimRightPx }: Rim): number {
  return Math.hypot(rimRightPx[0] - rimLeftPx[0], rimRightPx[1] - rimLeftPx[1]);
}

function rimHeight({ rimLeftPx, rimRightPx }: Rim): number {
  return (rimLeftPx[1] + rimRightPx[1]) / 2;
}
