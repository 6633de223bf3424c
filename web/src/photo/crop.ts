import type { BenchView } from '../../../server/schemas/pages.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { type Box, boxAround, pointsOfInterest } from './points.ts';

/**
 * The part of the photo worth showing: plant, ball and the top of the pot, with `margin` (share of the
 * plant's longer side) around them, brought to `aspect` (width ÷ height) inside the photo. The middle of
 * the photo when nothing was measured.
 */
export function plantCrop(view: View | BenchView, aspect: number, margin = 0.14): Box {
  const photo: Box = { x: 0, y: 0, width: view.widthPx, height: view.heightPx };
  const plant = boxAround(pointsOfInterest(view));
  if (!plant) return middleOf(photo, aspect);
  const room = Math.max(plant.width, plant.height) * margin;
  // The pot below the rim belongs to the picture: give it half of the room more than the sky.
  return fitAspect(
    {
      x: plant.x - room,
      y: plant.y - room,
      width: plant.width + 2 * room,
      height: plant.height + 2.5 * room,
    },
    aspect,
    photo,
  );
}

/** The largest box of this aspect in the middle of the photo. */
function middleOf(photo: Box, aspect: number): Box {
  const width = Math.min(photo.width, photo.height * aspect);
  const height = width / aspect;
  return { x: (photo.width - width) / 2, y: (photo.height - height) / 2, width, height };
}

/** Widens or heightens `box` about its centre to the aspect, then slides and trims it into `photo`. */
export function fitAspect(box: Box, aspect: number, photo: Box): Box {
  const width = Math.min(Math.max(box.width, box.height * aspect), photo.width);
  const height = Math.min(Math.max(box.height, box.width / aspect), photo.height);
  const slide = (start: number, size: number, room: number) => Math.min(Math.max(start, 0), room - size);
  return {
    x: slide(box.x + (box.width - width) / 2, width, photo.width),
    y: slide(box.y + (box.height - height) / 2, height, photo.height),
    width,
    height,
  };
}
