import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { NOTHING_KNOWN } from '../../core/canopy/known.ts';
import { type MeasuredPhoto, measurePhoto } from '../../core/measure-photo.ts';
import type { UprightPhoto } from '../../core/raster/raster.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import { networkAtHand } from '../../server/measuring/network.ts';
import { intersectionOverUnion } from '../score/overlap.ts';
import { type FormOfBall, formOfBall } from './form-of-ball.ts';
import { SAMPLES, type SamplePhoto } from './sample-photos.ts';
import { type SampleTruth, truthBeside } from './sample-truth.ts';

/** A sample photo with all that the gallery shows of it. */
export interface Exhibit {
  readonly sample: SamplePhoto;
  readonly photo: UprightPhoto;
  readonly measured: MeasuredPhoto;
  readonly form: FormOfBall | null;
  readonly truth: SampleTruth | null;
  /** Intersection over union with the true mask, 0–1; `null` without truth or cut-out. */
  readonly overlap: number | null;
}

/** Measures a sample photo as the server would on its first sitting: rim, turn and empty photo known. */
export async function measureSample(sample: SamplePhoto): Promise<Exhibit> {
  const photo = await readSample(sample.file);
  const empty = sample.empty === null ? null : (await readSample(sample.empty)).raster;
  const { network, note } = await networkAtHand(true);
  if (network === null) throw new Error(note ?? 'The network could not be loaded.');
  const measured = await measurePhoto(photo, {
    ...NOTHING_KNOWN,
    empty,
    network,
    photoName: sample.file,
    rimMm: sample.plant.rimMm,
    stand: null,
    turnDeg: sample.turnDeg,
  });
  const truth = await truthBeside(sample, photo);
  const overlap =
    truth === null || measured.canopy === null ? null : intersectionOverUnion(measured.canopy, truth.mask);
  return { sample, photo, measured, form: formOfBall(measured, photo), truth, overlap };
}

async function readSample(file: string): Promise<UprightPhoto> {
  return readUprightPhoto(await readFile(join(SAMPLES, file)));
}
