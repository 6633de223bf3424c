import { radOf, wholeTurn } from '../../../core/turned/circular-statistics.ts';
import { placeWords } from '../../../core/turned/place-words.ts';
import { capital, degreeWords, potTurnWords } from '../words/turn-words.ts';
import type { ViewCount } from './turn-plan.ts';

/**
 * What to do for the next shot.
 *
 * @param fromDeg turn of the pot as it stands, by the last shot; `null` before the first
 */
export function stepWords(turnDeg: number, fromDeg: number | null): string {
  if (fromDeg === null) {
    return turnDeg === 0
      ? 'Turn the mark to the camera'
      : `From the mark at the camera, ${potTurnWords(turnDeg)}`;
  }
  const by = potTurnWords(turnDeg - fromDeg);
  return by === null ? 'Leave the pot as it stands' : `Turn the pot ${by}`;
}

/** Where the mark then points, seen from above with the camera at 6: clockwise from 6 as the pot is turned. */
export function markPlaceWords(turnDeg: number): string {
  const place = placeWords(markFromCameraDeg(turnDeg));
  return turnDeg === 0
    ? 'Seen from above, the mark points to 6 o’clock, where the camera is.'
    : `Seen from above with the camera at 6 o’clock, the mark points to ${place}.`;
}

/** Direction of the mark from the pot, degrees anticlockwise from the camera. */
export function markFromCameraDeg(turnDeg: number): number {
  return wholeTurn(-turnDeg);
}

/** What the shot should look like: where on the rim the mark is to be seen. */
export function markInPictureWords(turnDeg: number): string {
  const aside = Math.sin(radOf(markFromCameraDeg(turnDeg)));
  const near = Math.cos(radOf(markFromCameraDeg(turnDeg)));
  if (Math.abs(aside) < 0.05) {
    return near > 0
      ? 'In the picture the mark is in front, in the middle of the rim.'
      : 'In the picture the mark is hidden behind, opposite the camera.';
  }
  const side = aside < 0 ? 'left' : 'right';
  if (Math.abs(aside) > 0.97) return `In the picture the mark is just at the ${side} end of the rim.`;
  const tenths = Math.round(Math.abs(aside) * 10);
  return near > 0
    ? `In the picture the mark is in front, ${tenths} tenths of the way from the middle of the rim to its ${side} end.`
    : `In the picture the mark is behind the plant, ${tenths} tenths of the way to the rim’s ${side} end.`;
}

/** "Mark to the camera", "An eighth of a turn clockwise, 45°". */
export function shotName(turnDeg: number): string {
  if (turnDeg === 0) return 'Mark to the camera';
  return `${capital(potTurnWords(turnDeg) ?? '')}, ${degreeWords(turnDeg)}`;
}

/** What a number of views tells and what it cannot. */
export interface CountMeaning {
  readonly tells: string;
  readonly cannot: string;
}

export const COUNT_MEANINGS: Record<ViewCount, CountMeaning> = {
  1: {
    tells: 'Left and right of one outline: roundness, symmetry, long stems.',
    cannot: 'Front and back. No plan, no solid, no weak side all round.',
  },
  2: {
    tells: 'The heavy side as a direction, and a rough plan.',
    cannot: `The plan between the two is a guess, and a wrong turn cannot be noticed. ${hullShare(2)}`,
  },
  4: {
    tells:
      'The heavy side, the reach all round, the solid. Wrong turns are noticed. The best use of few photos.',
    cannot: `A single long stem between two views may hide. ${hullShare(4)}`,
  },
  6: {
    tells: 'All that four tell, with a narrower plus-minus, and smaller bays.',
    cannot: `What no outline shows: a bay in the middle of the canopy. ${hullShare(6)}`,
  },
  8: {
    tells: 'The finest plan. Turn by a sixteenth each time; a collar or a notched turntable helps.',
    cannot: `Eight eighths all the way round would show four directions only. ${hullShare(8)}`,
  },
};

/** By how much the hull of a round plant is too large: (2k ÷ π) tan(π ÷ 2k) − 1 for k even directions. */
function hullShare(directions: number): string {
  const bias = ((2 * directions) / Math.PI) * Math.tan(Math.PI / (2 * directions));
  return `The solid of a round plant comes out ${((bias - 1) * 100).toFixed(1)} % too large, which is taken off.`;
}

export const TWINS_WORDS =
  'Views from opposite sides are mirror twins: they show the same outline, so they count once. That is why half a turn is enough.';
