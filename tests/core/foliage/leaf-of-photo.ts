import { readFileSync } from 'node:fs';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import { balancePhoto, type PhotoBalance } from '../../../core/colour/balance-photo.ts';
import { type LeafColours, leafColours } from '../../../core/foliage/leaf-colours.ts';
import { gatherPhoto, measureGathered } from '../../../core/measure-photo.ts';
import { openOpenCv } from '../../../core/opencv/door.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { readUprightPhoto } from '../../../server/intake/read-upright-photo.ts';
import { emptyStandFile, shotFile } from '../../reshot/shots.ts';

export const door = await openOpenCv();
const network = await openNetwork(readFileSync('core/canopy/model/first-guess.onnx'));

/** The photo of a stand with nothing on it. */
export async function emptyStand(view: ViewOptions): Promise<Raster> {
  return (await photoIn(await emptyStandFile(view))).raster;
}

/** The leaf of a rendered photo through the real cut-out, balanced by the stand's empty photo; `null` when no plant was cut out. */
export async function leafOfPhoto(
  view: ViewOptions,
  reference: Raster,
): Promise<{ readonly colours: LeafColours; readonly photoBalance: PhotoBalance } | null> {
  const photo = await photoIn(await shotFile(view));
  const stand = { reference, sheet: null, cameraDistanceMm: null, focalLengthPx: null };
  const options = { ...NOTHING_KNOWN, network, stand, photoName: '', rimMm: null, turnDeg: null };
  const gathered = await gatherPhoto(photo, options);
  const { found } = measureGathered(gathered, []);
  if (found === null) return null;
  const photoBalance = balancePhoto(photo.raster, found.parts, { reference, stand: gathered.stand });
  return {
    colours: leafColours(door, photo.raster, found.parts, {
      balance: photoBalance.balance,
      petalsTold: true,
    }),
    photoBalance,
  };
}

function photoIn(file: string) {
  return readUprightPhoto(new Uint8Array(readFileSync(file)));
}
