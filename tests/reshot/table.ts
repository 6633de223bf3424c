import type { Repeatable } from '../../core/trend/change-since.ts';
import { MEASURES, type Measure, type Readings, type ShotReadings } from './measure-shots.ts';
import { coverageOf, type Repeatability, repeatabilityOf } from './repeatability.ts';

/** One plant's readings, shot by shot. */
export interface PlantReadings {
  readonly name: string;
  readonly shots: readonly ShotReadings[];
  /** What the undisturbed plant's true outline and rim give. */
  readonly truth: Readings;
}

const HEAD = `${'plant'.padEnd(26)}${'measure'.padEnd(14)}shots    true    mean  spread  stated   inside  unchanged`;

/** For photos in their stand's frame and alone: a row for each plant and measure, then what is asked of them all together. */
export function reshotLines(plants: readonly PlantReadings[]): string[] {
  return (['framed', 'alone'] as const).flatMap((how) => {
    const of = plants.map(({ name, shots, truth }) => ({
      name,
      truth,
      shots: shots.map((shot) => shot[how]),
    }));
    const rows = of.flatMap((plant) => MEASURES.map((measure) => row(plant, measure)));
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
  readonly truth: Readings;
}

/** Repeatability of one measure where at least two shots have it. */
export function repeatabilityIn(shots: readonly Readings[], measure: Measure): Repeatability | null {
  const readings = shots.map((shot) => shot[measure]).filter((one): one is Repeatable => one !== null);
  return readings.length < 2 ? null : repeatabilityOf(readings);
}

function row({ name, shots, truth }: NamedReadings, measure: Measure): string {
  const found = repeatabilityIn(shots, measure);
  const head = `${name.padEnd(26)}${measure.padEnd(14)}`;
  if (found === null) return `${head}not measured`;
  const cells = [
    `${found.shots}`.padStart(5),
    (truth[measure]?.value.toFixed(1) ?? '-').padStart(8),
    found.mean.toFixed(1).padStart(8),
    found.spread.toFixed(2).padStart(8),
    found.statedSpread.toFixed(2).padStart(8),
    percent(found.inside / found.shots).padStart(9),
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
  const verdict = Math.abs(covered.inside - 0.95) <= 0.03 ? 'met' : 'missed';
  return [
    `${measure}: mean inside ${percent(covered.inside)} (asked 95 % ± 3 %: ${verdict}), truth ${percent(truthInside(measure, plants))}; ${percent(covered.unchanged)} of pairs unchanged`,
    `spread median ${(spreads[Math.floor(spreads.length / 2)] as number).toFixed(2)}`,
    `largest ${(spreads.at(-1) as number).toFixed(2)}`,
    `${spreads.filter((spread) => spread <= 0.7).length} of ${spreads.length} plants at 0.7 or less`,
  ].join('; ');
}

/** Share of all readings whose plus-minus holds what is true of the undisturbed plant: what every photo gets wrong alike counts too. */
function truthInside(measure: Measure, plants: readonly NamedReadings[]): number {
  const held = plants.flatMap(({ shots, truth }) =>
    shots.flatMap((shot) => {
      const [reading, wanted] = [shot[measure], truth[measure]];
      return reading && wanted ? [Math.abs(reading.value - wanted.value) <= reading.plusMinus ? 1 : 0] : [];
    }),
  );
  return held.reduce<number>((sum, one) => sum + one, 0) / held.length;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
