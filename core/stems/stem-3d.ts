import type { PlantPoint } from '../turned/turned-view.ts';

/** A stem that stands outside the ball, placed in the plant's own space from the views of a turned sitting. Mm. */
export interface Stem3D {
  /** Anticlockwise from the mark, degrees, 0 up to 360. */
  readonly azimuthDeg: number;
  /** Above level, seen from the ball's centre, degrees. */
  readonly elevationDeg: number;
  /** Along the stem from the rim plane to the tip; `null` where leaves hide the stem. */
  readonly lengthMm: number | null;
  /** How far the tip stands beyond where the other tips end. */
  readonly excessMm: number;
  /** 95 % uncertainty of the excess. */
  readonly plusMinusMm: number;
  readonly kind: 'shoot' | 'shoulder';
  /** The views whose outline shows its tip, by their place in the list as given, from 0. */
  readonly seenIn: readonly number[];
  /** Seen in one view only, so its depth rests on where the other views do not show it. */
  readonly unsure: boolean;
  readonly tipMm: PlantPoint;
}
