import { median, quantile } from '../quantile.ts';
import { percent, photoLine } from '../table.ts';
import { BLOOMS, EXPOSURES } from './plan.ts';
import type { RenderScore } from './score-renders.ts';

/** What is asked on own renders. */
const WANTED = {
  plain: { median: 0.98, low: 0.96 },
  busyWithEmpty: { median: 0.96, low: 0.93 },
  busyAlone: { median: 0.88 },
  /** How far blooms and exposures may move the score of the same plant. */
  within: 0.02,
  rimEnds: 0.015,
};

interface Wanted {
  readonly median?: number;
  readonly low?: number;
}

const HEAD = `${'own renders'.padEnd(44)}photos  median  10th pct  moved by  asked`;

/** One row for each condition, with what is asked of it. */
export function renderLines(scores: readonly RenderScore[], each: boolean): string[] {
  const asTaken = (one: RenderScore) => one.exposedAfter === 1 && one.plan.exposure === 1;
  const plain = scores.filter(({ plan }) => !plan.busy);
  const busy = scores.filter(({ plan, withEmpty }) => plan.busy && withEmpty);
  const busyAlone = scores.filter(({ plan, withEmpty }) => plan.busy && !withEmpty);
  return [
    HEAD,
    levelLine('plain', plain.filter(asTaken), WANTED.plain),
    levelLine('busy, empty photo at hand', busy.filter(asTaken), WANTED.busyWithEmpty),
    levelLine('busy, no empty photo', busyAlone, WANTED.busyAlone),
    ...[
      ['plain', plain] as const,
      ['busy, empty photo', busy] as const,
      ['busy, no empty photo', busyAlone] as const,
    ].flatMap(([name, group]) => bloomLines(name, group.filter(asTaken))),
    ...EXPOSURES.flatMap((factor) => [
      movedLine(`plain, photo exposed × ${factor}`, exposedAfter(plain, factor), plain.filter(asTaken)),
      movedLine(`plain, camera exposed × ${factor}`, exposedBefore(plain, factor), plain.filter(asTaken)),
      movedLine(
        `busy, empty photo, photo exposed × ${factor}`,
        exposedAfter(busy, factor),
        busy.filter(asTaken),
      ),
    ]),
    ...[
      ['plain', plain.filter(asTaken)] as const,
      ['busy, empty photo', busy.filter(asTaken)] as const,
      ['busy, no empty photo', busyAlone] as const,
    ].map(([name, group]) => rimLine(name, group)),
    ...refusedLines(scores),
    `time ${Math.round(median(msOf(scores)))} ms median, ${Math.round(quantile(msOf(scores), 1))} worst`,
    ...(each ? scores.map(({ scored, ...how }) => photoLine({ ...scored, name: nameOf(how) })) : []),
  ];
}

/** A refused photo counts as overlap 0 above. */
function refusedLines(scores: readonly RenderScore[]): string[] {
  const refused = scores.flatMap(({ scored, ...how }) =>
    scored.refused === null ? [] : [`${nameOf(how)} ${scored.refused}`],
  );
  return [`${refused.length} not measured${refused.length === 0 ? '' : `: ${refused.join(', ')}`}`];
}

function nameOf({ plan, withEmpty, exposedAfter }: Omit<RenderScore, 'scored'>): string {
  const light = exposedAfter === 1 ? '' : ` × ${exposedAfter}`;
  return `${plan.name}${light}${plan.busy && !withEmpty ? ' without empty' : ''}`;
}

const msOf = (scores: readonly RenderScore[]) => scores.map(({ scored }) => scored.ms);
const iousOf = (scores: readonly RenderScore[]) => scores.map(({ scored }) => scored.iou);

const exposedAfter = (scores: readonly RenderScore[], factor: number) =>
  scores.filter((one) => one.exposedAfter === factor);
const exposedBefore = (scores: readonly RenderScore[], factor: number) =>
  scores.filter((one) => one.plan.exposure === factor && one.exposedAfter === 1);

function levelLine(name: string, scores: readonly RenderScore[], wanted: Wanted): string {
  const [middle, low] = [median(iousOf(scores)), quantile(iousOf(scores), 0.1)];
  const words = [
    ...(wanted.median === undefined ? [] : [verdict(`median ≥ ${wanted.median}`, middle - wanted.median)]),
    ...(wanted.low === undefined ? [] : [verdict(`10th pct ≥ ${wanted.low}`, low - wanted.low)]),
  ];
  return line(name, scores, '', words.join('; '));
}

function bloomLines(name: string, scores: readonly RenderScore[]): string[] {
  return BLOOMS.map((bloom) => {
    const of = scores.filter(({ plan }) => plan.bloom === bloom);
    const green = scores.filter(({ plan }) => plan.bloom === 'none');
    return bloom === 'none'
      ? line(`${name}, green`, of, '', '')
      : movedLine(`${name}, ${bloom} bloom`, of, green, ({ plan }) => plan.place);
  });
}

/** How far a change moves the score of the same plant in the same place: the median of the differences. */
function movedLine(
  name: string,
  scores: readonly RenderScore[],
  before: readonly RenderScore[],
  key = ({ plan }: RenderScore) => `${plan.place} ${plan.bloom}`,
): string {
  const old = new Map(before.map((one) => [key(one), one.scored.iou]));
  const moved = median(scores.map((one) => one.scored.iou - (old.get(key(one)) as number)));
  const words = verdict(`within ${WANTED.within}`, WANTED.within - Math.max(0, -moved));
  return line(name, scores, moved.toFixed(3), words);
}

function rimLine(name: string, scores: readonly RenderScore[]): string {
  const rims = scores.flatMap(({ scored }) => (scored.rim === null ? [] : [scored.rim]));
  const found = `pot found in ${percent(rims.length / scores.length, 0)}`;
  if (rims.length === 0) return `${name}: ${found}`;
  const ends = rims.map((rim) => rim.ends);
  return [
    `${name}: ${found}`,
    `rim ends off by median ${percent(median(ends))}, worst ${percent(quantile(ends, 1))} of the rim`,
    `sideways by ${percent(median(rims.map((rim) => rim.sideways)))}`,
    `scale by ${percent(median(rims.map((rim) => Math.abs(rim.scale))))}`,
    `asked ${verdict(`≤ ${percent(WANTED.rimEnds)}`, WANTED.rimEnds - median(ends))}`,
  ].join('; ');
}

function line(name: string, scores: readonly RenderScore[], moved: string, words: string): string {
  const ious = iousOf(scores);
  const cells = [
    String(scores.length).padStart(6),
    median(ious).toFixed(3).padStart(8),
    quantile(ious, 0.1).toFixed(3).padStart(10),
    moved.padStart(10),
  ];
  return `${name.padEnd(44)}${cells.join('')}  ${words}`.trimEnd();
}

/** Whether what is asked is met, and by how much not. */
function verdict(wanted: string, margin: number): string {
  return margin >= 0 ? `${wanted} met` : `${wanted} missed by ${(-margin).toFixed(3)}`;
}
