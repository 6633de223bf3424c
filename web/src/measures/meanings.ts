import type { Measure } from './reading.ts';

/** What stands behind each number when it is opened: plain words, then how it is measured and by whose rule. */
export interface Meaning {
  readonly says: string;
  readonly measured: string;
  readonly best: string;
  /** Unit and range. */
  readonly range: string;
  /** Where the number leans by its nature, and how much. */
  readonly bias: string;
  /** How far to trust it. */
  readonly plusMinus: string;
  /** Author, year, title; or that the rule is Rondure's own. */
  readonly source: string;
}

export const PLUS_MINUS_MEANING =
  'Photograph the same plant again and again at once, and 19 times out of 20 the number lands within this of their middle. A change smaller than the plus-minus of the two sittings together (1.4 times this when both are alike) is called “no change”.';

export const PLUS_MINUS_UNKNOWN = 'This number has no plus-minus, so no advice rests on it.';

export const MEANINGS: Record<Measure, Meaning> = {
  roundness: {
    says: 'How near the outline comes to a true circle. A single long stem hardly moves it; flats and shoulders do.',
    measured:
      'Two circles with one centre are laid inside and outside the smoothed outline, as close together as they go (minimum zone circles). The score is 100 × inner radius ÷ outer radius, over the part of the outline that the pot does not hide, 6° clear of its rim. Smoothed means: waves shorter than a fifteenth of the way round are taken out.',
    best: '100 is a perfect circle.',
    range: 'No unit, 0 to 100.',
    bias: 'An oval of 1.25 to 1 has 80 by the rule and reads 80.2, since the smoothing lets 98.8 % of an oval pass. A long stem counts by as much of it as the smoothing leaves.',
    plusMinus: PLUS_MINUS_MEANING,
    source:
      'Circles and out of round: ISO 12181-1:2011 (MZCI, RONt). Smoothing: ISO 16610-21, Gaussian, on an open arc. The ratio is Rondure’s own; with both circles about one centre it equals Riley (1941), squared.',
  },
  symmetry: {
    says: 'How well the left half matches the right half.',
    measured:
      'The canopy is mirrored in the upright line through the middle of the pot rim. The score is 100 × the overlap of the two (Dice: twice the shared area ÷ the sum of both areas), above the rim.',
    best: '100 is a perfect match.',
    range: 'No unit, 0 to 100.',
    bias: 'It is read about the pot, not about the plant’s own middle: a line that is off by 5 % of the radius costs a perfect disc 6.4 points. So the rim has to be found well.',
    plusMinus: PLUS_MINUS_MEANING,
    source:
      'Dice (1945), Measures of the amount of ecologic association between species. Overlap with the mirror image as symmetry: de Valcourt (1966), Measures of axial symmetry for ovals.',
  },
  lopsidedness: {
    says: 'How far, and to which side, the canopy hangs away from the middle of the pot.',
    measured:
      'The distance from the upright line through the pot rim to the middle of the canopy’s area, as a share of the ball’s radius.',
    best: '0 stands straight over the pot.',
    range: '% of the ball’s radius, right or left. Half a ball, all on one side, reads 42.4 %.',
    bias: 'One photo tells left from right only. What leans to the camera or away from it needs a second, turned photo.',
    plusMinus: PLUS_MINUS_MEANING,
    source: 'First moment of area about the axis; the scaling is Rondure’s own.',
  },
  fill: {
    says: 'How closed the canopy is: bays in the outline and gaps you can see through take it down.',
    measured:
      'The canopy’s area ÷ the area inside a band stretched round it (solidity). Gaps are the holes ÷ the canopy with its holes filled.',
    best: '100 % has no bays.',
    range: '%, above 0 to 100. Gaps: %, 0 to 100.',
    bias: 'One long stem stretches the band and takes the figure down for the whole plant.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'Solidity: ISO 9276-6:2008.',
  },
  size: {
    says: 'The diameter of the ball: the circle that the canopy should fill.',
    measured:
      'A least-squares circle through the smoothed outline, with long stems left out. The scale comes from the stand sheet or the pot rim, with perspective counted.',
    best: 'Bigger is not better by itself; your schedule may set a pot or plant size.',
    range: 'mm, above 0.',
    bias: 'A millimetre wrong on a 130 mm rim is 0.8 % in every size. From near by a ball looks larger than it is; that is taken out where the camera’s distance is known.',
    plusMinus: PLUS_MINUS_MEANING,
    source: 'Least-squares circle: ISO 12181-1:2011 (LSCI), geometric fit, robust to what stands out.',
  },
  outOfRound: {
    says: 'The room between the tightest two circles that hold the outline between them.',
    measured:
      'Outer radius minus inner radius of the same two circles that give the roundness, in millimetres.',
    best: '0 mm is a perfect circle.',
    range: 'mm, 0 and up. It grows with the plant; the roundness does not.',
    bias: 'It takes the largest and the smallest radius, so any flaw of the outline makes it larger, never smaller.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'RONt about the minimum zone circle: ISO 12181-1:2011.',
  },
  bloom: {
    says: 'Bloom covers this much of the canopy as seen from the camera.',
    measured: 'The area of open flower ÷ the area of the whole canopy, both in the photo.',
    best: 'It tells how far the plant has come to its show; it is not a score.',
    range: '%, 0 to 100.',
    bias: 'Flowers on the far side are not seen; buds still green count as leaf. White petals are the hardest to tell: read about 4 points off on rendered plants, other colours about 1.',
    plusMinus: PLUS_MINUS_MEANING,
    source: 'Share of area; the rule is Rondure’s own.',
  },
};
