import { longStems } from '../../../core/stems/long-stems.ts';
import { matchStems } from '../../../core/stems/match-stems.ts';
import { turnedScene } from '../../../core/turned/turned-scene.ts';
import { renderedSitting } from './rendered-sitting.ts';
import { ASKED_MM, scorePhoto, scoreTurned } from './score-stems.ts';
import { cameraOf, measuredRender } from './sitting-of-plant.ts';
import { stemPlant } from './stem-plants.ts';
import { emptyTally, tallyLine } from './tally.ts';

export const EIGHTHS = [0, 45, 90, 135, 180, 225, 270, 315];

/** Leafy plants with one to five known long stems, and even ones, from exact masks. */
export function leafyFigures(plants: number, first: number): string[] {
  const tallies = { '1': emptyTally(), '4': emptyTally(), '8': emptyTally() };
  const even = { '1': [0, 0], '4': [0, 0], '8': [0, 0] };
  for (let seed = first; seed < first + plants; seed++) {
    const count = seed % 3 === 0 ? 0 : 1 + (seed % 5);
    const shots = renderedSitting(stemPlant({ seed, longStems: count, bare: false }), EIGHTHS);
    const measured = shots.map(measuredRender);
    const camera = cameraOf(shots[0] as (typeof shots)[number]);
    for (const views of ['4', '8'] as const) {
      const scene = turnedScene(
        measured.slice(0, Number(views)).map(({ view }) => view),
        camera,
      );
      const { stems } = matchStems(scene);
      if (count === 0) countCut(even[views], stems.length > 0);
      else scoreTurned(stems, shots[0]?.truth.stems ?? [], tallies[views]);
    }
    measured.slice(0, 4).forEach(({ silhouette, rim, ball }, k) => {
      const { truth, longShoots, otherShoots } = shots[k] as (typeof shots)[number];
      const stems = longStems({ loops: silhouette.loops, rim }, ball, 0.5);
      if (count === 0) countCut(even['1'], stems.length > 0);
      else scorePhoto(stems, { longShoots, others: otherShoots, mmPerPx: truth.mmPerPx }, tallies['1']);
    });
    process.stderr.write(`leafy ${seed}\n`);
  }
  return (['1', '4', '8'] as const).flatMap((views) => [
    tallyLine(
      `leafy, ${views} ${views === '1' ? 'photo' : 'views'}, stems of ${ASKED_MM} mm and more`,
      tallies[views],
    ),
    `even leafy plants, ${views} ${views === '1' ? 'photo' : 'views'}: a cut advised on ${even[views][0]} of ${even[views][1]}`,
  ]);
}

function countCut(counts: number[], cut: boolean): void {
  counts[0] = (counts[0] as number) + (cut ? 1 : 0);
  counts[1] = (counts[1] as number) + 1;
}
