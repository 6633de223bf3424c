import type { Repeatable } from '../../core/trend/change-since.ts';
import { MEASURES, type Measure, type Readings, type ShotReadings } from './measure-shots.ts';
import { coverageOf, type Repeatability, repeatabilityOf } from './repeatability.ts';

/** One plant's readings, shot by shot. */
export interface PlantReadings {
  readonly name: string;
  readonly shots: readonly ShotReadings[];
}

const HEAD = `${'plant'.padEnd(26)}${'measure'.padEnd(14)}shots    mean  spread  stated  unchanged`;

/** For photos in their stand's frame and alone: a row for each plant and measure, then what is asked of them all together. */
export function reshotLines(plants: readonly PlantReadings[]): string[] {
  return (['framed', 'alone'] as const).flatMap((how) => {
    const of = plants.map(({ name, shots }) => ({ name, shots: shots.map((shot) => shot[how]) }));
    const rows = of.flatMap(({ name, shots }) => MEASURES.map((measure) => row(name, measure, shots)));
    return [TITLES[how], HEAD, ...rows, ...MEASURES.map((measure) => summary(measure, of)), ''];
  });
}

const TITLES = {
  framed: 'In the frame of the stand’s empty photo',
  alone: 'Without a frame: a camera put up anew each time',
};

interface NamedReadings {
  readonly name: string;
  readonly shots: readonly Readings[];
}

/** Repeatability of one measure where at least two shots have it. */
export function repeatabilityIn(shots: readonly Readings[], measure: Measure): Repeatability | null {
  const readings = shots.map((shot) => shot[measure]).filter((one): one is Repeatable => one !== null);
  return readings.length < 2 ? null : repeatabilityOf(readings);
}

function row(name: string, measure: Measure, shots: readonly Readings[]): string {
  const found = repeatabilityIn(shots, measure);
  const head = `${name.padEnd(26)}${measure.padEnd(14)}`;
  if (found === null) return `${head}not measured`;
  const cells = [
    `${found.shots}`.padStart(5),
    found.mean.toFixed(1).padStart(8),
    found.spread.toFixed(2).padStart(8),
    found.statedSpread.toFixed(2).padStart(8),
    percent(found.unchanged / found.pairs).padStart(11),
  ];
  return head + cells.join('');
}

function summary(measure: Measure, plants: readonly NamedReadings[]): string {
  const found = plants
    .map(({ shots }) => repeatabilityIn(shots, measure))
    .filter((one): one is Repeatability => one !== null);
  const spreads = found.map(({ spread }) => spread).sort((one, other) => one - other);
  const covered = coverageOf(found);
  const verdict = Math.abs(covered - 0.95) <= 0.03 ? 'met' : 'missed';
  return [
    `${measure}: ${percent(covered)} of pairs unchanged (asked 95 % ± 3 %: ${verdict})`,
    `spread median ${(spreads[Math.floor(spreads.length / 2)] as number).toFixed(2)}`,
    `largest ${(spreads.at(-1) as number).toFixed(2)}`,
    `${spreads.filter((spread) => spread <= 0.7).length} of ${spreads.length} plants at 0.7 or less`,
  ].join('; ');
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
