/**
 * How well limp plants are told from grown and cut ones through the real cut-out, on rendered photos, printed as a table.
 *
 * `node --import tsx tests/core/vigour/rendered-figures.ts [PLANTS] [FIRST]`: PLANTS plants (default 30), seeds from FIRST (default 8200, seeds that nothing was
 * chosen on), each before one of four plain backdrops. A photo as it stands firm, and a week on as it grew, cut back by 80 mm unwritten, and limp;
 * each day with other light, noise, leaves and camera shake. Renders are kept in the system's folder for passing files.
 */

import { readFileSync } from 'node:fs';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import { addDays, day } from '../../../core/day/day.ts';
import { measurePhoto } from '../../../core/measure-photo.ts';
import { statureReading } from '../../../core/vigour/stature-reading.ts';
import type { StatureReading } from '../../../core/vigour/wilt.ts';
import { seededChance } from '../../../sample-images/render/geometry/seeded-random.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { PLANT_SEASONS } from '../../../sample-images/render/season/plants.ts';
import { sittingView } from '../../../sample-images/render/season/sitting-view.ts';
import { readUprightPhoto } from '../../../server/intake/read-upright-photo.ts';
import { disturbed, USUAL } from '../../reshot/disturb.ts';
import { emptyStandFile, shotFile } from '../../reshot/shots.ts';
import { count, median, share } from '../growth/tally.ts';
import { judged, NOTED } from './judged.ts';
import { tipStop } from './limp-plants.ts';

const plants = Number(process.argv[2] ?? 30);
const first = Number(process.argv[3] ?? 8200);
const DRAFT = { size: 0.4, samplesPerSide: 2 };
const STANDS = ['window-regal', 'corner-angel', 'old-regal', 'porch-zonal'] as const;
const FIRM_DAY = day('2026-05-01');
const [GREW, CUT, LIMP, FAINT] = [
  'a week on',
  'cut back by 80 mm',
  'drooped by 15 % and more',
  'drooped by less',
];
const network = await openNetwork(
  new Uint8Array(readFileSync(new URL('../../../core/canopy/model/first-guess.onnx', import.meta.url))),
);

interface Photographed {
  readonly firm: ViewOptions;
  readonly grown: ViewOptions;
  readonly cut: ViewOptions;
  readonly limp: ViewOptions;
  readonly rimMm: number;
}

function photographed(seed: number): Photographed {
  const chance = seededChance(seed);
  const season = PLANT_SEASONS.find(({ key }) => key === STANDS[seed % STANDS.length]);
  if (season === undefined) throw new RangeError('Expected a sample plant of each stand');
  const plant = { ...season.plant, seed, longShoots: [], flower: null };
  const week = 3 + Math.floor(6 * chance.uniform(1));
  const on = (later: number, shot: number) =>
    disturbed(sittingView({ ...season, plant }, week + later, seed % 360, DRAFT, null), shot, {
      ...USUAL,
      cameraDeg: 0.3,
    });
  const limp = chance.between(0.8, 1.6, 2);
  return {
    firm: on(0, 0),
    grown: on(1, 1),
    cut: { ...on(1, 2), cuts: tipStop(80) },
    limp: {
      ...on(1, 3),
      droop: { leafRad: limp * chance.between(0.8, 1.2, 3), shootRad: 0.75 * limp, seed },
    },
    rimMm: season.pot.rimMm,
  };
}

async function reading(
  view: ViewOptions,
  firm: ViewOptions,
  rimMm: number,
  days: number,
): Promise<StatureReading | null> {
  const photo = await readUprightPhoto(new Uint8Array(readFileSync(await shotFile(view))));
  const empty = await readUprightPhoto(new Uint8Array(readFileSync(await emptyStandFile(firm))));
  const stand = { reference: empty.raster, sheet: null, cameraDistanceMm: null, focalLengthPx: null };
  const options = { ...NOTHING_KNOWN, network, stand, photoName: '', rimMm, turnDeg: null };
  const { stature } = (await measurePhoto(photo, options)).report;
  return stature === null ? null : statureReading(addDays(FIRM_DAY, days), stature, 'mm', null);
}

for (let seed = first; seed < first + plants; seed++) {
  const { firm, rimMm, ...later } = photographed(seed);
  const before = await reading(firm, firm, rimMm, 0);
  const grown = await reading(later.grown, firm, rimMm, 7);
  const judge = (row: string, now: StatureReading | null) => {
    count('measured', before !== null && now !== null);
    if (before === null || now === null) return;
    const found = judged(row, now, before);
    const numbers = [...Object.values(found.fallen).map((fell) => -100 * fell), 100 * found.hangsOut];
    const cells = numbers.map((one) => one.toFixed(1).padStart(6)).join(' ');
    console.log(`${seed} ${row.padEnd(26)} ${found.isLimp ? 'limp' : 'firm'} ${cells}`);
  };
  judge(GREW as string, grown);
  judge(CUT as string, await reading(later.cut, firm, rimMm, 7));
  const limp = await reading(later.limp, firm, rimMm, 7);
  const fall = limp === null || grown === null ? 0 : 1 - limp.height / grown.height;
  judge((fall >= 0.15 ? LIMP : FAINT) as string, limp);
}

console.log(
  `\n${plants} plants, seeds from ${first}; photos measured ${share('measured')} %; median change of height, spread, mean height of the leaf, tightness; share outside the former outline, %`,
);
for (const row of [GREW, CUT, LIMP, FAINT]) {
  const moved = NOTED.map((measure) => median(`${row} ${measure}`).padStart(6));
  console.log(`${row?.padEnd(26)} called limp ${share(row as string).padStart(5)} %   ${moved.join(' ')}`);
}
