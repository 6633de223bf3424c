import type { Box, Point } from '../photo/points.ts';

/** Size of the stage on the screen, CSS px. */
export interface StageSize {
  readonly width: number;
  readonly height: number;
}

/** The closest look: one photo px is this many CSS px. */
const CLOSEST = 10;

/**
 * The window is the part of the photo that the stage shows, in photo px. It always has the stage's aspect,
 * so both axes have one scale, and may reach beyond the photo where the aspects differ.
 */
export function windowAround(box: Box, stage: StageSize): Box {
  const width = Math.max(box.width, (box.height * stage.width) / stage.height, 1);
  const height = (width * stage.height) / stage.width;
  return { x: box.x + (box.width - width) / 2, y: box.y + (box.height - height) / 2, width, height };
}

/** Photo px in one CSS px. */
export function unitOf(window: Box, stage: StageSize): number {
  return window.width / stage.width;
}

/** The place in the photo under a place on the stage (CSS px from the stage's top left). */
export function photoPointAt(at: Point, window: Box, stage: StageSize): Point {
  const unit = unitOf(window, stage);
  return [window.x + at[0] * unit, window.y + at[1] * unit];
}

/** The nearest place that lies in the photo. */
export function intoPhoto([x, y]: Point, photo: Box): Point {
  return [
    Math.min(Math.max(x, photo.x), photo.x + photo.width),
    Math.min(Math.max(y, photo.y), photo.y + photo.height),
  ];
}

/** Looks `factor` times closer, with the photo point `about` staying where it is on the stage. */
export function zoomed(window: Box, factor: number, about: Point, photo: Box, stage: StageSize): Box {
  const widest = windowAround(photo, stage).width;
  const width = Math.min(Math.max(window.width / factor, stage.width / CLOSEST), widest);
  const share = width / window.width;
  return heldOn(photo, {
    x: about[0] - (about[0] - window.x) * share,
    y: about[1] - (about[1] - window.y) * share,
    width,
    height: window.height * share,
  });
}

/** Moves the photo under the finger by CSS px. */
export function panned(window: Box, [across, down]: Point, photo: Box, stage: StageSize): Box {
  const unit = unitOf(window, stage);
  return heldOn(photo, { ...window, x: window.x - across * unit, y: window.y - down * unit });
}

/** Two fingers keep the photo points under them: from one pair of places on the stage to the next. */
export function pinched(
  window: Box,
  from: readonly [Point, Point],
  to: readonly [Point, Point],
  photo: Box,
  stage: StageSize,
): Box {
  const middle = (pair: readonly [Point, Point]): Point => [
    (pair[0][0] + pair[1][0]) / 2,
    (pair[0][1] + pair[1][1]) / 2,
  ];
  const spread = ([a, b]: readonly [Point, Point]) => Math.hypot(a[0] - b[0], a[1] - b[1]) || 1;
  const [start, end] = [middle(from), middle(to)];
  const closer = zoomed(window, spread(to) / spread(from), photoPointAt(start, window, stage), photo, stage);
  return panned(closer, [end[0] - start[0], end[1] - start[1]], photo, stage);
}

/** Slides the window by no more than it takes to show the point, with a share of the window as room around it. */
export function showing(window: Box, [x, y]: Point, photo: Box, roomShare: number): Box {
  const room = Math.min(window.width, window.height) * roomShare;
  const slide = (start: number, size: number, place: number) =>
    Math.min(Math.max(start, place + room - size), place - room);
  return heldOn(photo, {
    ...window,
    x: slide(window.x, window.width, x),
    y: slide(window.y, window.height, y),
  });
}

/** Keeps the photo in sight: the window ends at the photo's edges, or the photo lies in its middle. */
function heldOn(photo: Box, window: Box): Box {
  const hold = (start: number, size: number, from: number, room: number) =>
    size >= room ? from + (room - size) / 2 : Math.min(Math.max(start, from), from + room - size);
  return {
    ...window,
    x: hold(window.x, window.width, photo.x, photo.width),
    y: hold(window.y, window.height, photo.y, photo.height),
  };
}
