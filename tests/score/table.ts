import { EVIDENCE_SOURCES } from '../../core/canopy/evidence-sources.ts';
import { EARLIER_ROW, FROM_EARLIER, sourceRow } from './other-ways.ts';
import { median, quantile } from './quantile.ts';
import type { Row } from './rows.ts';
import type { FolderScore } from './score-folder.ts';
import type { Scored } from './score-ours.ts';

const NAME_WIDTH = 38;
const HEAD = `  ${''.padEnd(NAME_WIDTH)}IoU median  10th pct  ms median   worst`;

/** A folder's table, and with `each` one line a photo, worst first. */
export function folderLines(score: FolderScore, each: boolean): string[] {
  const { name, photos, rows, spoke } = score;
  const silent =
    spoke === null ? [] : EVIDENCE_SOURCES.filter((source) => source !== 'network' && !spoke.has(source));
  const hidden = new Set(silent.map(sourceRow));
  if (silent.includes('learned-colour') && silent.includes('last-outline')) hidden.add(EARLIER_ROW);
  return [
    `${name}: ${photos.length} photos; ${facts(photos).join('; ')}`,
    HEAD,
    ...[...rows].filter(([row]) => !hidden.has(row)).map(([row, values]) => rowLine(row, values)),
    ...(silent.length === 0 ? [] : [`  nothing to say in this folder: ${silent.join(', ')}`]),
    ...unheardLines(score),
    ...(each ? [...photos].sort((one, other) => one.iou - other.iou).map(photoLine) : []),
    '',
  ];
}

/** Voices whose switch changed no photo at all: they said nothing that counted, or are not listened to. */
function unheardLines({ rows, spoke }: FolderScore): string[] {
  const unheard = [...(spoke ?? [])].filter((source) => {
    const full = rows.get(FROM_EARLIER.has(source) ? EARLIER_ROW : 'ours')?.ious;
    const off = rows.get(sourceRow(source))?.ious;
    return off?.every((iou, k) => iou === full?.[k]);
  });
  return unheard.length === 0 ? [] : [`  switched off without any change to a score: ${unheard.join(', ')}`];
}

export function rowLine(name: string, { ious, ms }: Row): string {
  const times = ms.length === 0 ? ['', ''] : [whole(median(ms)), whole(quantile(ms, 1))];
  return `  ${name.padEnd(NAME_WIDTH)}${[
    median(ious).toFixed(3).padStart(10),
    quantile(ious, 0.1).toFixed(3).padStart(10),
    (times[0] as string).padStart(11),
    (times[1] as string).padStart(8),
  ].join('')}`.trimEnd();
}

function facts(photos: readonly Scored[]): string[] {
  const measured = photos.filter(({ refused }) => refused === null);
  const refused = photos.flatMap(({ name, refused: why }) => (why === null ? [] : [`${name} ${why}`]));
  const withPot = measured.filter(({ potWidthPx }) => potWidthPx !== null);
  const rims = photos.flatMap(({ rim }) => (rim === null ? [] : [rim]));
  const ends = rims.map((rim) => rim.ends);
  const scales = rims.map((rim) => Math.abs(rim.scale));
  return [
    `${refused.length} not measured${refused.length === 0 ? '' : ` (${refused.join(', ')})`}`,
    `pot found in ${percent(withPot.length / photos.length, 0)}`,
    ...(rims.length === 0
      ? []
      : [
          `rim ends off by median ${percent(median(ends))}, worst ${percent(quantile(ends, 1))} of the rim`,
          `scale off by median ${percent(median(scales))}, worst ${percent(quantile(scales, 1))}`,
        ]),
  ];
}

/** One photo: what came out, what was said of it. */
export function photoLine({
  name,
  iou,
  ms,
  refused,
  confidence,
  potWidthPx,
  edgeUncertaintyPx,
  rim,
}: Scored): string {
  const words = [`    ${iou.toFixed(3)}`, `${whole(ms)} ms`, name];
  if (refused !== null) return [...words, refused].join('  ');
  words.push(
    `stated ${confidence?.toFixed(2)}`,
    `pot ${potWidthPx === null ? 'none' : `${whole(potWidthPx)} px`}`,
    `edge ±${edgeUncertaintyPx?.toFixed(1)} px`,
  );
  if (rim !== null) words.push(`rim ${percent(rim.ends)}`, `scale ${percent(rim.scale)}`);
  return words.join('  ');
}

const whole = (value: number): string => String(Math.round(value));
export const percent = (value: number, digits = 1): string => `${(100 * value).toFixed(digits)} %`;
