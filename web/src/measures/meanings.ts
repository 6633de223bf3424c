import type { Measure } from './reading.ts';

/** What stands behind each number when it is opened: plain words, then how it is measured. */
export interface Meaning {
  readonly name: string;
  readonly says: string;
  readonly measured: string;
  readonly best: string;
}

export const MEANINGS: Record<Measure, Meaning> = {
  roundness: {
    name: 'Roundness',
    says: 'How near the outline comes to a true circle. A single long stem hardly moves it; flats and shoulders do.',
    measured:
      'Two circles with one centre are laid inside and outside the smoothed outline, as close together as they go. The score is 100 × inner radius ÷ outer radius, over the part of the outline that the pot does not hide.',
    best: '100 is a perfect circle.',
  },
  symmetry: {
    name: 'Symmetry',
    says: 'How well the left half matches the right half.',
    measured:
      'The canopy is mirrored in the upright line through the middle of the pot rim. The score is 100 × the overlap of the two (Dice: twice the shared area ÷ the sum of both areas), above the rim.',
    best: '100 is a perfect match.',
  },
  lopsidedness: {
    name: 'Lopsidedness',
    says: 'How far, and to which side, the canopy hangs away from the middle of the pot.',
    measured:
      'The distance from the upright line through the pot rim to the middle of the canopy’s area, as a share of the ball’s radius.',
    best: '0 stands straight over the pot.',
  },
  fill: {
    name: 'Fill',
    says: 'How closed the canopy is: bays in the outline and gaps you can see through take it down.',
    measured:
      'The canopy’s area ÷ the area inside a band stretched round it. Gaps are the holes ÷ the canopy with its holes filled.',
    best: '100 % has no bays.',
  },
  size: {
    name: 'Size',
    says: 'The diameter of the ball: the circle that the canopy should fill.',
    measured:
      'A least-squares circle through the smoothed outline, with long stems left out. The pot rim gives the scale, so the rim must be measured across the outside.',
    best: 'Bigger is not better by itself; your schedule may set a pot or plant size.',
  },
  outOfRound: {
    name: 'Out of round',
    says: 'The room between the tightest two circles that hold the outline between them.',
    measured:
      'Outer radius minus inner radius of the same two circles that give the roundness, in millimetres.',
    best: '0 mm is a perfect circle.',
  },
  bloom: {
    name: 'Bloom',
    says: 'Bloom covers this much of the canopy as seen from the camera.',
    measured: 'The area of open flower ÷ the area of the whole canopy, both in the photo.',
    best: 'It tells how far the plant has come to its show; it is not a score.',
  },
};

export const PLUS_MINUS_MEANING =
  'Plus-minus: photograph the same plant again at once and 19 times out of 20 the number lands within this. A change smaller than the plus-minus of the two sittings together is called “no change”.';

export const PLUS_MINUS_UNKNOWN = 'This number has no plus-minus yet, so no advice rests on it.';
