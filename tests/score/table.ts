import type { Scored } from './score-photo.ts';

/** Prints one folder's line, and with `each` one line a photo. */
export function printFolder(name: string, scored: readonly Scored[], each: boolean): void {
  const measured = scored.filter(({ found }) => found.ok);
  const all = scored.map(({ iou }) => iou);
  const words = [
    `${name}: ${scored.length} photos`,
    `IoU median ${share(quantile(all, 0.5))}, 10th percentile ${share(quantile(all, 0.1))}`,
    `${Math.round(
      quantile(
        scored.map(({ ms }) => ms),
        0.5,
      ),
    )} ms median, ${Math.round(
      quantile(
        scored.map(({ ms }) => ms),
        1,
      ),
    )} worst`,
    `${scored.length - measured.length} not measured${reasons(scored)}`,
    `${measured.filter(({ found }) => found.ok && found.pot === null).length} without pot`,
  ];
  const rims = scored.flatMap(({ rimError }) => (rimError === null ? [] : [rimError]));
  const scales = scored.flatMap(({ scaleError }) => (scaleError === null ? [] : [Math.abs(scaleError)]));
  if (rims.length > 0) {
    words.push(
      `rim ends off by median ${percent(quantile(rims, 0.5))}, worst ${percent(quantile(rims, 1))} of the rim`,
      `scale off by median ${percent(quantile(scales, 0.5))}, worst ${percent(quantile(scales, 1))}`,
    );
  }
  process.stdout.write(`${words.join('; ')}\n`);
  if (each)
    for (const one of [...scored].sort((a, b) => a.iou - b.iou)) process.stdout.write(`${line(one)}\n`);
}

function line({ pair, iou, ms, found, scaleError, rimError }: Scored): string {
  const words = [
    `  ${iou.toFixed(3)}`,
    `${Math.round(ms)} ms`,
    pair.name,
    found.ok ? 'measured' : found.reason,
  ];
  if (found.ok) {
    const width =
      found.pot === null ? 'none' : `${Math.round(found.pot.rimRightPx[0] - found.pot.rimLeftPx[0])} px`;
    words.push(`pot ${width}`, `edge ±${found.edgeUncertaintyPx.toFixed(1)} px`);
  }
  if (scaleError !== null) words.push(`scale ${percent(scaleError)}`, `rim ${percent(rimError ?? 0)}`);
  return words.join('  ');
}

function reasons(scored: readonly Scored[]): string {
  const named = scored.flatMap(({ pair, found }) => (found.ok ? [] : [`${pair.name} ${found.reason}`]));
  return named.length === 0 ? '' : ` (${named.join(', ')})`;
}

/** The value below which `share` of the values lie, straight-line between ranks. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  const place = share * (sorted.length - 1);
  const low = sorted[Math.floor(place)] ?? Number.NaN;
  const high = sorted[Math.ceil(place)] ?? Number.NaN;
  return low + (place - Math.floor(place)) * (high - low);
}

const share = (value: number): string => value.toFixed(3);
const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;
