import type { FrameFit } from './frame-fit.ts';
import { STANDING_LIMITS } from './limits.ts';

/** What the words need beside the fit. */
export interface FramePlace {
  /** Longer side of the picture the fit was made on, px. */
  readonly longerSidePx: number;
  /** At the plant's distance, mm per px of that picture; `null` when unknown. */
  readonly mmPerPx: number | null;
  /** Camera to plant axis on the first day, mm; `null` when unknown. */
  readonly cameraDistanceMm: number | null;
}

/**
 * Says in one plain sentence where the camera stands against the stand's first picture.
 *
 * @param fit px of the raster
 *
 * Notes: what moved to the right in the picture was seen from further left. A camera that only looks further left shows
 * the same, so the words hold for either. Only what exceeds half of its bound for `same` is named.
 *
 * Example: "The camera stands about 2 cm further left than on the first day."
 */
export function frameInWords(fit: FrameFit, place: FramePlace): string {
  if (fit.standing === 'same') return 'The camera stands where it stood on the first day.';
  const [rightPx, downPx] = fit.shiftPx;
  const aside = [
    ...asideWords(rightPx, ['further left', 'further right'], place),
    ...asideWords(downPx, ['higher', 'lower'], place),
    ...nearerWords(fit.zoom, place),
  ];
  const tipped = turnWords(fit.turnDeg);
  if (aside.length === 0) return `The camera is ${tipped} against the first day.`;
  const stands = `The camera stands ${listed(aside)} than on the first day`;
  return tipped === null ? `${stands}.` : `${stands} and is ${tipped}.`;
}

/** What to do about a camera past the limit. */
export const FAR_NOTE =
  'That is too far for the scores to be compared with earlier ones: put the camera back in its place and take the photo again.';

/** What to do about a photo of another place. */
export const ELSEWHERE_NOTE =
  'This photo does not show the stand as it was set up, so the scores cannot be compared with earlier ones. Put the camera back in its place, or choose the right stand, or set the stand up anew.';

function asideWords(
  shiftPx: number,
  [forward, backward]: readonly [string, string],
  { longerSidePx, mmPerPx }: FramePlace,
): string[] {
  const share = Math.abs(shiftPx) / longerSidePx;
  if (share <= STANDING_LIMITS.same.shiftShare / 2) return [];
  const way = shiftPx > 0 ? forward : backward;
  if (mmPerPx === null) return [`about ${sizeOf(100 * share)} % of the picture ${way}`];
  return [`about ${lengthInWords(Math.abs(shiftPx) * mmPerPx)} ${way}`];
}

function nearerWords(zoom: number, { cameraDistanceMm }: FramePlace): string[] {
  const bound = 1 + (STANDING_LIMITS.same.zoom - 1) / 2;
  if (Math.max(zoom, 1 / zoom) <= bound) return [];
  const way = zoom > 1 ? 'nearer' : 'further away';
  const share = Math.abs(1 - 1 / zoom);
  if (cameraDistanceMm === null) return [`about ${sizeOf(100 * share)} % ${way}`];
  return [`about ${lengthInWords(share * cameraDistanceMm)} ${way}`];
}

/** A picture that is turned clockwise was taken with the camera's left side down. */
function turnWords(turnDeg: number): string | null {
  if (Math.abs(turnDeg) <= STANDING_LIMITS.same.turnDeg / 2) return null;
  return `tipped by about ${sizeOf(Math.abs(turnDeg))}° to the ${turnDeg > 0 ? 'left' : 'right'}`;
}

/** Tenths below 2, whole units above: no more than "about" can bear. */
function sizeOf(value: number): string {
  return value < 2 ? String(Math.max(0.1, Math.round(10 * value) / 10)) : String(Math.round(value));
}

function lengthInWords(mm: number): string {
  return mm < 9.5 ? `${Math.max(1, Math.round(mm))} mm` : `${Math.round(mm / 10)} cm`;
}

function listed(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
