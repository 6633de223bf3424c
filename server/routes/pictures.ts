import type { Request, Response } from 'express';
import { z } from 'zod';
import { WIDEST_PICTURE_PX } from '../bench/keep-photo.ts';
import { uprightPicture } from '../bench/upright-picture.ts';
import type { Services } from '../services.ts';
import { sent } from './problems.ts';

const pictureQuerySchema = z.object({
  width: z.enum(['320', '800', '1600'], 'Ask for a width of 320, 800 or 1600.').default('1600'),
});

/** Sends the upright copy of a photo, at most as wide as asked; as WebP to who names it, which browsers do. It never holds camera data or a place. */
export async function sendPicture(
  services: Services,
  sha256: string,
  request: Request,
  response: Response,
): Promise<void> {
  const widthPx = Number(sent(pictureQuerySchema, request.query).width);
  const isWidest = widthPx === WIDEST_PICTURE_PX;
  const format =
    !isWidest && request.accepts(['image/jpeg', 'image/webp']) === 'image/webp' ? 'webp' : 'jpeg';
  const picture = await uprightPicture(services, sha256, widthPx, format);
  response.vary('Accept');
  sendUnchanging(response, {
    tag: `${sha256.slice(0, 16)}-${widthPx}-${format}`,
    type: `image/${format}`,
    bytes: picture,
  });
}

/** Sends bytes that the browser may keep: it asks whether they are still right, and mostly gets a short yes. */
export function sendUnchanging(
  response: Response,
  { tag, type, bytes }: { readonly tag: string; readonly type: string; readonly bytes: Uint8Array },
): void {
  response.type(type).set('Cache-Control', 'private, no-cache').set('ETag', `"${tag}"`);
  response.send(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
}
