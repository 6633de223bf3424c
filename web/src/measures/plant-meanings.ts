import { type Meaning, PLUS_MINUS_MEANING, PLUS_MINUS_UNKNOWN } from './meanings.ts';
import type { PlantMeasure } from './plant-readings.ts';

const LEAF_MEASURED =
  'Each leaf px is judged by its hue in CIE L*a*b* under D65, after white and exposure are set by the stand sheet’s greys or by the empty stand. Below 109° leaf is no longer green; dark yellow and what lies beyond it is brown.';
const LEAF_NORMAL =
  'Once its first sittings in good health are kept, the plant is held against its own leaf, so golden, zoned and variegated kinds read green.';
const LEAF_SOURCE =
  'Colour: CIE L*a*b*, ISO/CIE 11664-4:2019. The limits are Rondure’s own, and were tried on rendered plants.';
const LEAF_PLUS_MINUS = `${PLUS_MINUS_MEANING} The doubt of this photo’s white is in it. What all photos of the plant read wrong alike is not: it is said beside the number.`;
const EDGE_PLUS_MINUS = `${PLUS_MINUS_MEANING} It holds what the outline leaves open.`;

/** What stands behind each number on leaf, flower, gaps and canopy. */
export const PLANT_MEANINGS: Record<PlantMeasure, Meaning> = {
  greenLeaf: {
    says: 'The share of the leaf in view that has the plant’s healthy colour.',
    measured: `${LEAF_MEASURED} ${LEAF_NORMAL}`,
    best: 'What is usual for the plant itself is its best; other plants are no measure.',
    range: '% of the leaf that could be judged, 0 to 100. Green, yellow and brown make 100 %.',
    bias: 'Leaf inside the plant and on the far side is not seen.',
    plusMinus: LEAF_PLUS_MINUS,
    source: LEAF_SOURCE,
  },
  yellowLeaf: {
    says: 'The share of the leaf in view that has turned yellow. It tells a colour, never its cause.',
    measured: `${LEAF_MEASURED} ${LEAF_NORMAL}`,
    best: 'None is best; a few old leaves low down turn yellow on every plant.',
    range: '% of the leaf that could be judged, 0 to 100.',
    bias: 'On rendered plants it read about 2 points off. Yellow leaf inside the plant is not seen.',
    plusMinus: LEAF_PLUS_MINUS,
    source: LEAF_SOURCE,
  },
  brownLeaf: {
    says: 'The share of the leaf in view that is brown: margins, spots or whole leaves.',
    measured: `${LEAF_MEASURED} ${LEAF_NORMAL}`,
    best: 'None is best.',
    range: '% of the leaf that could be judged, 0 to 100.',
    bias: 'Thin brown margins blur into what lies beside them: about half of their area is read.',
    plusMinus: `${LEAF_PLUS_MINUS} It is wide, because of the blur.`,
    source: LEAF_SOURCE,
  },
  flowerHeads: {
    says: 'So many flower heads can be seen from the camera, the least and the most that fit.',
    measured:
      'Patches of flower that hang together hold as many heads as would cover their area. A head is taken to be 45 to 85 mm across on most pelargoniums, 30 to 60 mm on angels and dwarfs, 20 to 40 mm on single and 30 to 60 mm on double fuchsias.',
    best: 'It is a count, not a score.',
    range: 'No unit, 0 and up; two numbers are a range.',
    bias: 'Heads behind others and at the back are not counted. Where heads run together into one sheet the range is wide.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'Plain counting by area; the head sizes are Rondure’s own guess, no published table was found.',
  },
  tightness: {
    says: 'How much of its ball the canopy fills, above the rim.',
    measured:
      'The area of canopy inside the ball ÷ the area of the ball, both above the rim. An hour of the clock is called thin when it is open by 10 points more than the middle one and by more than its own plus-minus.',
    best: '100 % is a ball without a gap.',
    range: '% of the ball above the rim, 0 to 100.',
    bias: 'Seen from one side: leaf behind fills a gap before it, so a loose plant may read tight in its middle.',
    plusMinus: EDGE_PLUS_MINUS,
    source:
      'Gap fraction, as for light through leaf since Monsi and Saeki (1953), from memory; inside the ball it is Rondure’s own.',
  },
  openBase: {
    says: 'How open the lowest third is: the way by which light and air reach the base.',
    measured:
      'Background ÷ all, in the lowest third of the canopy’s height above the rim, between its left and right ends.',
    best: 'There is no best; compare it before and after a clean-up.',
    range: '%, 0 to 100.',
    bias: 'What lies beside the canopy, but within its width, counts as open; leaf below the rim does not count.',
    plusMinus: EDGE_PLUS_MINUS,
    source: 'Gap fraction; the rule is Rondure’s own.',
  },
  canopyHeight: {
    says: 'The height of the whole canopy, long stems too.',
    measured: 'From its highest to its lowest point in the photo, by the photo’s scale.',
    best: 'It is a size, not a score; your schedule may set one.',
    range: 'mm, above 0.',
    bias: 'A single tip sets it.',
    plusMinus: `${PLUS_MINUS_MEANING} Taken to be as large a share as the ball’s.`,
    source: 'Plain extent; the rule is Rondure’s own.',
  },
  canopyWidth: {
    says: 'The width of the whole canopy as seen, long stems too.',
    measured: 'From its left to its right end in the photo, by the photo’s scale.',
    best: 'It is a size, not a score; your schedule may set one.',
    range: 'mm, above 0.',
    bias: 'A single tip sets it. It holds for this side only.',
    plusMinus: `${PLUS_MINUS_MEANING} Taken to be as large a share as the ball’s.`,
    source: 'Plain extent; the rule is Rondure’s own.',
  },
  canopyArea: {
    says: 'How large the canopy is as seen from the camera: steadier than height or width, which one tip can set.',
    measured: 'The px of the canopy, by the square of the photo’s scale.',
    best: 'It is a size, not a score.',
    range: 'cm², above 0; mm² ÷ 100.',
    bias: 'A scale wrong by 1 % is 2 % in an area.',
    plusMinus: `${PLUS_MINUS_MEANING} Taken to be twice as large a share as the ball’s.`,
    source: 'Pixel count; the rule is Rondure’s own.',
  },
};
