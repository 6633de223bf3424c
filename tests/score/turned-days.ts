import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { turnBetween, wholeTurn } from '../../core/turned/circular-statistics.ts';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import { joinSitting, type SittingView } from '../../server/measuring/join-sitting.ts';
import { measureFile, NO_STAND } from '../../server/measuring/measure-file.ts';
import { quantile } from './quantile.ts';

/**
 * Joins each day's turned photos of one plant and tells how steady its lopsidedness is from day to day, and that it turns with the plant
 * when every view is told to be 45° further on.
 *
 *   node --import tsx tests/score/turned-days.ts [--rim-mm MM] DIR
 *
 * Photos in DIR are named after their day and turn, as in `plant_2018-06-06_sv045.jpg`. Which way round the pot was turned does not matter here:
 * the other way mirrors the plan.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { 'rim-mm': { type: 'string' } },
});
const [folder] = positionals;
if (folder === undefined) throw new Error('Name the folder with the photos.');
const NAME = /(\d{4}-\d{2}-\d{2})[-_](?:sv|turn)(\d+)\.(?:jpe?g|png|webp)$/i;
const RELABELLED_DEG = 45;
const say = (line: string) => process.stdout.write(`${line}\n`);

const days = new Map<string, SittingView[]>();
for (const file of readdirSync(folder).sort()) {
  const [, day, turn] = NAME.exec(file) ?? [];
  if (day === undefined) continue;
  const turnDeg = wholeTurn(Number(turn));
  const { report, maskPng, lens } = await measureFile({
    path: join(folder, file),
    photoName: file,
    rimMm: values['rim-mm'] === undefined ? null : Number(values['rim-mm']),
    emptyPath: null,
    stand: NO_STAND,
    turnDeg,
    network: true,
    colours: null,
    lastOutline: null,
    normalLeaf: null,
    strokes: [],
    pictures: 'photo',
  });
  days.set(day, [...(days.get(day) ?? []), { report, maskPng, lens }]);
}

const joined = (views: readonly SittingView[]) => joinSitting({ views, cameraHeightMm: null, light: null });
const vectors: { day: string; u: number; v: number }[] = [];
const turnedOn: number[] = [];
for (const [day, views] of days) {
  const sitting = await joined(views);
  const vector = sitting.plan.lopsidedness;
  if (vector === null) {
    say(`${day}: no vector. ${sitting.notes.join(' ')}`);
    continue;
  }
  const onward = await joined(
    views.map(({ report, ...rest }) => ({
      ...rest,
      report: { ...report, turnDeg: wholeTurn((report.turnDeg ?? 0) + RELABELLED_DEG) },
    })),
  );
  const by = turnBetween(vector.azimuthDeg, onward.plan.lopsidedness?.azimuthDeg ?? Number.NaN);
  turnedOn.push(by);
  const angle = (vector.azimuthDeg * Math.PI) / 180;
  vectors.push({ day, u: vector.percent * Math.cos(angle), v: vector.percent * Math.sin(angle) });
  say(
    `${day}: ${inWords(sitting, views.length)}; relabelled by ${RELABELLED_DEG}° it turns by ${by.toFixed(2)}°`,
  );
}

const steps = vectors.slice(1).map(({ u, v }, k) => {
  const before = vectors[k] as (typeof vectors)[number];
  return Math.hypot(u - before.u, v - before.v);
});
if (steps.length > 0) {
  say(
    `From one day to the next the vector's tip moves by ${quantile(steps, 0.5).toFixed(1)} % of the ball's radius (median), ${quantile(steps, 0.9).toFixed(1)} % (90 %); ${vectors.length} of ${days.size} days.`,
  );
  const worst = Math.max(...turnedOn.map((by) => Math.abs(by - RELABELLED_DEG)));
  say(`Relabelled it turns by ${RELABELLED_DEG}° within ${worst.toFixed(3)}°.`);
}

function inWords({ plan: { lopsidedness: vector }, faults }: TurnedReport, views: number): string {
  if (vector === null) return '';
  const told = faults.length === 0 ? '' : `, faults: ${faults.map(({ kind }) => kind).join(', ')}`;
  return `${views} views, ${vector.percent.toFixed(1)} % ± ${vector.plusMinus.toFixed(1)} to ${vector.azimuthDeg.toFixed(0)}° ± ${vector.plusMinusDeg.toFixed(0)}, disagreement ${vector.disagreement.toFixed(2)}${told}`;
}
