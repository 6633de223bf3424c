import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

export const SAMPLES = join(import.meta.dirname, '../../sample-images');

/** Steps of 255 that a camera's sensor strays by in ordinary light. */
const SENSOR_NOISE = 6;

/**
 * A photo as a camera of so many megapixels would have stored it: enlarged, with a sensor's noise, so that its JPEG weighs what a camera's does.
 *
 * @param path of a render, for one under `SAMPLES`
 * @param seed any number gives another noise; the same gives the same
 */
export async function cameraPhoto(path: string, megapixels: number, seed: number): Promise<Buffer> {
  const photo = sharp(readFileSync(path), { limitInputPixels: false }).autoOrient();
  const { autoOrient } = await photo.metadata();
  const factor = Math.sqrt((megapixels * 1e6) / (autoOrient.width * autoOrient.height));
  const { data, info } = await photo
    .resize(Math.round(autoOrient.width * factor), Math.round(autoOrient.height * factor), {
      kernel: 'cubic',
    })
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  let state = seed + 1;
  for (let at = 0; at < data.length; at += 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const stray = ((state >>> 24) / 255 - 0.5) * 2 * Math.sqrt(3) * SENSOR_NOISE;
    data[at] = Math.max(0, Math.min(255, Math.round((data[at] as number) + stray)));
  }
  return sharp(data, {
    raw: { width: info.width, height: info.height, channels: 3 },
    limitInputPixels: false,
  })
    .jpeg({ quality: 90 })
    .toBuffer();
}

/** The same picture in a file of other bytes: a JPEG comment after its first marker (ITU-T T.81, B.2.4.5). */
export function asAnotherFile(jpeg: Buffer, words: string): Buffer {
  const text = Buffer.from(words, 'latin1');
  const head = Buffer.from([0xff, 0xfe, 0, 0]);
  head.writeUInt16BE(text.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, text, jpeg.subarray(2)]);
}
