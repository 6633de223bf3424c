import { readFileSync } from 'node:fs';
import type { Raster } from '../../../core/raster/raster.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { sittingView } from '../../../sample-images/render/season/sitting-view.ts';
import { type Pinhole, pinhole } from '../../../sample-images/render/view/camera.ts';
import { readUprightPhoto } from '../../../server/intake/read-upright-photo.ts';
import { shotFile } from '../../reshot/shots.ts';
import { PLAIN_PLACES } from '../renders/places.ts';
import type { HungSheet } from './hang-sheet.ts';

/** Distances of the camera, and how far the plant stands before the sheet. */
export const DISTANCES_MM = [800, 1100, 1500, 2100, 3000] as const;
export const BEHIND_MM = 150;

/** A rendered plant with room for the sheet beside it. */
export interface ScaleScene {
  readonly name: string;
  readonly distanceMm: number;
  readonly rimMm: number;
  readonly photo: Raster;
  readonly camera: Pinhole;
  readonly hung: HungSheet;
  readonly seed: number;
}

/** Width that the photo spans at the plant: the sheet hangs left of plants up to 300 mm wide. */
const FIELD_MM = 780;
const CORNER_MM = [-400, 280] as const;

/** Plants whose rim can be seen, with the height of the lens above the rim as a share of the distance. */
const PLANTS = [
  { place: 'grey-cloth', week: 3, lensShare: 0.2, turnDeg: 0 },
  { place: 'white-studio', week: 4, lensShare: 0.12, turnDeg: 8 },
  { place: 'pale-sweep-full', week: 9, lensShare: 0.28, turnDeg: -6 },
] as const;

/** Every plant at every distance, rendered or taken from the last run. */
export async function scaleScenes(): Promise<ScaleScene[]> {
  const scenes: ScaleScene[] = [];
  for (const { place, week, lensShare, turnDeg } of PLANTS) {
    const found = PLAIN_PLACES.find(({ name }) => name === place);
    if (found === undefined) throw new RangeError(`Expected the name of a plain place but received ${place}`);
    const { season } = found;
    for (const [k, distanceMm] of DISTANCES_MM.entries()) {
      const usual = sittingView(season, week, found.turnDeg, { size: 1, samplesPerSide: 2 }, null);
      const view: ViewOptions = {
        ...usual,
        camera: {
          distanceMm,
          heightMm: lensShare * distanceMm,
          aimMm: [-45 + 4 * k, 70],
          fieldMm: FIELD_MM,
          rollDeg: 0.3 * (k - 2),
        },
        widthPx: 1600,
        heightPx: 1200,
      };
      const bytes = new Uint8Array(readFileSync(await shotFile(view)));
      scenes.push({
        name: place,
        distanceMm,
        rimMm: season.pot.rimMm,
        photo: (await readUprightPhoto(bytes)).raster,
        camera: pinhole(view.camera, view.widthPx, view.heightPx),
        hung: { behindMm: BEHIND_MM, turnDeg, cornerMm: CORNER_MM },
        seed: 7 + k,
      });
    }
  }
  return scenes;
}
