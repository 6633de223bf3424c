// How small a picture may be measured on before its numbers change: `node --import tsx tests/speed/working-side.ts [EVERY]`
// measures every sample photo (or every EVERY-th) at the working side and on smaller copies of it.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { quantile } from 'simple-statistics';
import type { PhotoReport } from '../../core/report.ts';
import type { ViewTruth } from '../../sample-images/render/truth.ts';
import { WORKING_SIDE_PX } from '../../server/intake/read-upright-photo.ts';
import { type MeasureTask, measureFile, NO_STAND } from '../../server/measuring/measure-file.ts';
import { SAMPLES } from './camera-photos.ts';

/** As it stands beside a sample photo. */
type TruthFile = ViewTruth & { readonly photo: string; readonly empty: string | null };

const SMALLER = [1280, 1000, 800];
const every = Number(process.argv[2] ?? 1);

/** A number of the report beside its plus-minus, sizes in mm. */
const NUMBERS: Readonly<
  Record<string, (report: PhotoReport) => { value: number; plusMinus: number } | null>
> = {
  roundness: ({ roundness }) => roundness && { value: roundness.score, plusMinus: roundness.plusMinus },
  symmetry: ({ symmetry }) => symmetry && { value: symmetry.score, plusMinus: symmetry.plusMinus },
  lopsidedness: ({ lopsidedness }) =>
    lopsidedness && { value: lopsidedness.percent, plusMinus: lopsidedness.plusMinus },
};

async function reportOf(path: string, rimMm: number, emptyPath: string | null): Promise<PhotoReport> {
  const task: MeasureTask = {
    path,
    photoName: path,
    rimMm,
    emptyPath,
    stand: NO_STAND,
    turnDeg: 0,
    network: true,
    colours: null,
    lastOutline: null,
    normalLeaf: null,
    strokes: [],
    pictures: 'none',
  };
  return (await measureFile(task)).report;
}

const folder = mkdtempSync(join(tmpdir(), 'rondure-side-'));
try {
  const photos = readdirSync(SAMPLES, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.truth.json'))
    .sort()
    .filter((_, k) => k % every === 0);
  const apart = new Map<string, number[]>();
  const beyond = new Map<string, number>();
  let measured = 0;
  for (const name of photos) {
    const truth = JSON.parse(readFileSync(join(SAMPLES, name), 'utf8')) as TruthFile;
    const at = async (side: number) => {
      const copied = async (from: string, to: string) => {
        const path = join(folder, to);
        await sharp(readFileSync(from))
          .resize(side, side, { fit: 'inside', withoutEnlargement: true })
          .png()
          .toFile(path);
        return path;
      };
      const photo = await copied(join(SAMPLES, truth.photo), 'photo.png');
      const empty = truth.empty && (await copied(join(SAMPLES, truth.empty), 'empty.png'));
      return reportOf(photo, truth.rimMm, empty);
    };
    const whole = await at(WORKING_SIDE_PX);
    if (whole.status !== 'measured') continue;
    measured += 1;
    for (const side of SMALLER) {
      const small = await at(side);
      for (const [number, of] of Object.entries(NUMBERS)) {
        const [a, b] = [of(whole), of(small)];
        const key = `${side} ${number}`;
        const isBeyond = a !== null && (b === null || Math.abs(b.value - a.value) > a.plusMinus);
        if (isBeyond) beyond.set(key, (beyond.get(key) ?? 0) + 1);
        if (a && b) apart.set(key, [...(apart.get(key) ?? []), Math.abs(b.value - a.value)]);
      }
    }
  }
  console.log(`${measured} photos measured at ${WORKING_SIDE_PX} px and smaller`);
  for (const side of SMALLER) {
    for (const number of Object.keys(NUMBERS)) {
      const key = `${side} ${number}`;
      const all = apart.get(key) ?? [0];
      const told = [quantile(all, 0.5), quantile(all, 0.95), Math.max(...all)].map((one) => one.toFixed(2));
      console.log(
        `${side} px, ${number}: apart by ${told.join(' / ')} (median / 95 % / worst), beyond the plus-minus in ${beyond.get(key) ?? 0}`,
      );
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}
