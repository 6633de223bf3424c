// How well a moved camera's frame is found: `npm run --silent score-frames -- [MOVES]`, 4 moves a pair unless told.
import { gatherEvidence } from '../../../core/canopy/gather-evidence.ts';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { openOpenCv } from '../../../core/opencv/door.ts';
import { median, quantile } from '../quantile.ts';
import { type CameraMove, chanceMove, movedPair } from './moved-pairs.ts';
import { FAR_MOVES, SAMPLE_PAIRS } from './moves.ts';
import { sheetPaster } from './paste-sheet.ts';
import { type ScoredFrame, scoreFrame } from './score-frame.ts';

const SMALL = { shiftPx: 40, turnDeg: 3, zoomShare: 0.05 };

const moves = Number(process.argv[2] ?? 4);
const door = await openOpenCv();
const paste = sheetPaster();
const rows: { readonly how: string; readonly stand: string; readonly scored: ScoredFrame }[] = [];

for (const [k, { stand, reference, photo }] of SAMPLE_PAIRS.entries()) {
  const small = Array.from({ length: moves }, (_, n) => chanceMove(100 * k + n, SMALL));
  const tell = async (how: string, wanted: readonly CameraMove[], withSheet: boolean) => {
    for (const [n, move] of wanted.entries()) {
      const pair = await movedPair(reference, photo, move, 1000 * k + n, withSheet ? paste : undefined);
      const gathered = await gatherEvidence(pair.photo, NOTHING_KNOWN);
      const scored = scoreFrame(door, pair, gathered.ok ? gathered.object : null, withSheet);
      rows.push({ how, stand, scored });
      const { error, turnErrorDeg, doubt, standing, ms, from } = scored;
      console.error(
        `${stand} ${how} ${n}: ${from} ${error?.toFixed(2) ?? '-'} px, turn off by ${turnErrorDeg?.toFixed(3) ?? '-'}° (said ± ${doubt?.turnDeg.toFixed(3) ?? '-'}°), ${standing} ${ms.toFixed(0)} ms`,
      );
    }
  };
  await tell('features, small move', small, false);
  await tell('marks, small move', small, true);
  await tell('features, far move', FAR_MOVES, false);
  await tell('marks, far move', FAR_MOVES, true);
}

console.log(
  `${'stand'.padEnd(18)}${'how'.padEnd(24)}photos  fitted  median px  95 % px  worst px  turn off °  said °  told far or no frame  ms`,
);
const hows = [...new Set(rows.map(({ how }) => how))];
const stands = ['all', ...new Set(rows.map(({ stand }) => stand))];
for (const stand of stands) {
  for (const how of hows) {
    const of = rows.filter((row) => row.how === how && (stand === 'all' || row.stand === stand));
    const errors = of.flatMap(({ scored }) => (scored.error === null ? [] : [scored.error]));
    const told = of.filter(({ scored }) => scored.standing !== 'same' && scored.standing !== 'moved').length;
    const px = (value: number) => (errors.length === 0 ? '–' : value.toFixed(2));
    console.log(
      [
        stand.padEnd(18),
        how.padEnd(24),
        String(of.length).padStart(6),
        String(errors.length).padStart(8),
        px(median(errors)).padStart(11),
        px(quantile(errors, 0.95)).padStart(9),
        px(quantile(errors, 1)).padStart(10),
        rootMeanSquare(of.map(({ scored }) => scored.turnErrorDeg)).padStart(12),
        rootMeanSquare(of.map(({ scored }) => scored.doubt?.turnDeg ?? null)).padStart(8),
        `${told}/${of.length}`.padStart(22),
        median(of.map(({ scored }) => scored.ms))
          .toFixed(0)
          .padStart(6),
      ].join(''),
    );
  }
}

function rootMeanSquare(values: readonly (number | null)[]): string {
  const known = values.filter((value) => value !== null);
  if (known.length === 0) return '–';
  return Math.sqrt(known.reduce((sum, value) => sum + value ** 2, 0) / known.length).toFixed(3);
}
