import { type Meaning, PLUS_MINUS_UNKNOWN } from '../measures/meanings.ts';
import type { TurnedMeasure } from './turned-readings.ts';

/** What stands behind each number of a turned sitting. */
export const TURNED_MEANINGS: Record<TurnedMeasure, Meaning> = {
  lean: {
    says: 'How far, and to which side, the canopy hangs away from the middle of the pot, seen from above.',
    measured:
      'In each view the canopy’s middle stands some way beside the axis. Turned round, a lean makes that distance swing like a wave; the wave that fits all views best (least squares) has its height as the size and its crest as the side. What opposite views share is counted once.',
    best: '0 stands straight over the pot. Two per cent or less, plus-minus counted, is called even.',
    range: '% of the ball’s radius, 0 and up, and a direction on the clock seen from above, the mark at 6.',
    bias: 'A size is never below 0, so an even plant reads a little above it; that is what the plus-minus is for. Two directions are the least; with two there is nothing left over to check them by.',
    plusMinus:
      '19 times out of 20 the true tip of the arrow lies in the dotted oval. It comes from each view’s own plus-minus and from what single leaves do to a silhouette’s middle; where the views disagree by more than that, it grows by as much.',
    source:
      'Generalised least squares: Aitken (1935), On least squares and linear combination of observations. Growth of the plus-minus: Birge (1932). The scaling is Rondure’s own.',
  },
  reach: {
    says: 'How far out the canopy comes towards each side, the least and the most of it.',
    measured:
      'From the axis to the farthest upright plane, square to that side, that still touches canopy. It is read where silhouettes end, at right angles to each view; between those sides a smooth curve joins them.',
    best: 'All sides alike is best. 100 % fills the ball.',
    range: 'mm, or % of the ball’s radius without a scale; above 0.',
    bias: 'One long stem raises the reach of its side and of its neighbours. Filled-in sides never reach beyond what the silhouettes allow.',
    plusMinus:
      '19 times out of 20 the reach lies in the band. It is narrow where a silhouette ends and wide between; the figure here is the widest. Measured on simulated leafy plants.',
    source:
      'Distance of the touching plane, as in convex geometry. Curve between: Rasmussen and Williams (2006), Gaussian Processes for Machine Learning, eq. 2.25–2.26.',
  },
  ball: {
    says: 'The diameter of the ball that fits the plant from all sides.',
    measured:
      'The sphere whose outline lies nearest to the smoothed outlines of all views at once, each seen from the camera’s true place.',
    best: 'Bigger is not better by itself. A middle far beside the axis is another sign of a lean.',
    range: 'mm, above 0. Not known without a scale.',
    bias: 'A ball of known size comes out within 1 %. What the pot hides below the rim is not used.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source:
      'Least-squares circle of ISO 12181-1:2011 carried over to the sphere; the joining of views is Rondure’s own.',
  },
  outOfRound: {
    says: 'How far the plant departs from that ball, over all views.',
    measured: 'Outermost minus innermost of all smoothed outlines, measured from the ball’s middle.',
    best: '0 mm is a perfect ball.',
    range: 'mm, or % of the ball’s radius without a scale; 0 and up.',
    bias: 'More views see more flaws, so compare sittings with the same number of views. A wrong turn makes it larger, never smaller.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'RONt about the least-squares circle, ISO 12181-1:2011, over all views.',
  },
  volume: {
    says: 'The room that the canopy takes up, its gaps filled.',
    measured:
      'Every silhouette allows only what lies within its sight lines; what all of them allow is the hull. Its volume is divided by how much too large a round plant’s hull comes out with these views.',
    best: 'It is a size, not a score: good to follow growth by.',
    range: 'ml or litres, above 0. Not known without a scale.',
    bias: 'The hull is never smaller than the plant: for a round one by 27.3 % with 2 directions, 5.5 % with 4, 2.3 % with 6, 1.3 % with 8. That is taken off here. Bays that no silhouette shows stay filled, so an uneven plant still reads too large.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source:
      'Visual hull: Laurentini (1994), The visual hull concept for silhouette-based image understanding. The share for k directions is (2k ÷ π) tan(π ÷ 2k), worked out for the round plant.',
  },
  sphericity: {
    says: 'How near the hull comes to a ball, by its surface.',
    measured: 'Surface of a ball of the same volume ÷ surface of the hull.',
    best: '1 is a ball; a cube has 0.81.',
    range: 'No unit, above 0 to 1.',
    bias: 'Seen from few sides even a ball gets corners, so compare it with what a perfect ball would read with these views. Rounding at the hull’s edges adds up to 0.006.',
    plusMinus: PLUS_MINUS_UNKNOWN,
    source: 'Wadell (1935), Volume, shape, and roundness of quartz particles, J. Geology 43:250–280.',
  },
};
