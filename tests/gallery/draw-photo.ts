import { rawPicture } from '../../server/intake/sharp-door.ts';
import { fitAspect } from '../../web/src/photo/crop.ts';
import { type Box, boxAround, type Point } from '../../web/src/photo/points.ts';
import { cutLayer } from './draw-cuts.ts';
import { lineLayers } from './draw-lines.ts';
import { unsureLayer, weakLayer } from './draw-zones.ts';
import { LAYERS, type Layer } from './layers.ts';
import { boxAttributes, escaped, px } from './markup.ts';
import type { Exhibit } from './measure-sample.ts';

/** Width of the picture under the drawing, px: sharp enough to judge a line by, small enough for one file. */
const PICTURE_WIDTH_PX = 760;
/** Width on the screen, CSS px, for which labels and hatching are sized: between a phone's and a desk's. */
const SIZED_FOR_PX = 400;
/** Room round everything drawn, share of its longer side. */
const MARGIN = 0.06;

/** The photo with every layer drawn on it, as one SVG that holds its own picture. */
export async function drawPhoto(exhibit: Exhibit, id: string): Promise<string> {
  const crop = windowOf(exhibit);
  const unitPx = crop.width / SIZED_FOR_PX;
  const drawn = new Map<Layer, string>([
    ...lineLayers(exhibit, id, crop),
    ['weak', weakLayer(exhibit, id, crop, unitPx)],
    ['unsure', unsureLayer(exhibit, id, unitPx)],
    ['cuts', cutLayer(exhibit.measured.report, crop, unitPx)],
  ]);
  const layers = (Object.keys(LAYERS) as Layer[]).map((layer) => drawn.get(layer) ?? '').join('');
  const jpeg = await pictureOf(exhibit, crop);
  return (
    `<svg viewBox="${[crop.x, crop.y, crop.width, crop.height].map(px).join(' ')}" role="img" ` +
    `aria-label="${escaped(exhibit.sample.file)} with what was measured drawn on it">` +
    `<image href="data:image/jpeg;base64,${jpeg.toString('base64')}" ${boxAttributes(crop)} preserveAspectRatio="none"/>` +
    `${layers}</svg>`
  );
}

/** The part of the photo that holds all that is drawn, with some room; the whole photo when nothing is. */
function windowOf({ measured, form, photo }: Exhibit): Box {
  const whole = { x: 0, y: 0, width: photo.widthPx, height: photo.heightPx };
  const { outlinePx, partsOutlines, report } = measured;
  const { ball, longStems, unsure } = report;
  const points: Point[] = [outlinePx, ...Object.values(partsOutlines).flat()].flat();
  points.push(...longStems.map(({ tipPx }) => tipPx), ...unsure.flatMap(({ outlinePx: edge }) => edge));
  if (ball !== null) points.push(...cornersAround(ball.centrePx, ball.radiusPx));
  if (form !== null) points.push(...cornersAround(form.zone.centre, form.zone.outerRadius));
  const box = boxAround(points);
  if (box === null) return whole;
  const room = MARGIN * Math.max(box.width, box.height);
  const roomy = {
    x: box.x - room,
    y: box.y - room,
    width: box.width + 2 * room,
    height: box.height + 2 * room,
  };
  return wholePx(fitAspect(roomy, 1, whole));
}

function cornersAround([x, y]: Point, radius: number): Point[] {
  return [
    [x - radius, y - radius],
    [x + radius, y + radius],
  ];
}

function wholePx({ x, y, width, height }: Box): Box {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  return { x: left, y: top, width: Math.floor(x + width) - left, height: Math.floor(y + height) - top };
}

function pictureOf({ photo }: Exhibit, crop: Box): Promise<Buffer> {
  const { raster, widthPx, heightPx } = photo;
  const across = (value: number) => Math.floor((value * raster.width) / widthPx);
  const down = (value: number) => Math.floor((value * raster.height) / heightPx);
  return rawPicture(raster.data, { width: raster.width, height: raster.height, channels: 3 })
    .extract({
      left: across(crop.x),
      top: down(crop.y),
      width: across(crop.width),
      height: down(crop.height),
    })
    .resize({ width: PICTURE_WIDTH_PX, withoutEnlargement: true })
    .jpeg({ quality: 72 })
    .toBuffer();
}
