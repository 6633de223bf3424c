import { NOTHING_KNOWN } from '../../core/canopy/known.ts';
import { measurePhoto } from '../../core/measure-photo.ts';
import { readEnvironment } from '../environment.ts';
import { networkAtHand } from './network.ts';

let warm: Promise<void> | null = null;

/** Loads whatever core loads on demand, by measuring a blank photo, so that the grower's first one need not wait. */
export function warmUp(): Promise<void> {
  warm ??= measureBlank();
  return warm;
}

async function measureBlank(): Promise<void> {
  const wanted = readEnvironment(process.env).RONDURE_NETWORK === 'on';
  const { network } = await networkAtHand(wanted);
  const [width, height] = [320, 240];
  const raster = { width, height, data: new Uint8Array(3 * width * height).fill(200) };
  await measurePhoto(
    { raster, widthPx: width, heightPx: height },
    { ...NOTHING_KNOWN, network, photoName: 'blank', rimMm: null, turnDeg: null, stand: null },
  );
}
