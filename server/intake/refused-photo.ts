import { MOST_PIXELS } from './most-pixels.ts';

export const REFUSAL_REASONS = [
  'altered',
  'empty',
  'not-a-photo',
  'cut-off',
  'broken',
  'too-small',
  'too-many-pixels',
  'too-many-bytes',
  'ended-the-reader',
] as const;
export type RefusalReason = (typeof REFUSAL_REASONS)[number];

/** A file that cannot become a photo of the store; `hint` tells the grower what is wrong and what to do. */
export interface RefusedPhoto {
  readonly ok: false;
  readonly reason: RefusalReason;
  readonly hint: string;
}

/** Largest file taken, bytes. */
export const MOST_BYTES = 40 * 1024 * 1024;
/** Shortest side taken, px: below it a plant's outline is a few dozen px across. */
export const LEAST_SIDE_PX = 200;

const HINTS: Record<Exclude<RefusalReason, 'not-a-photo' | 'too-small'>, string> = {
  altered:
    'The photo arrived otherwise than it was sent: something was lost or changed on the way. Send it again.',
  empty: 'The file is empty. Copy the photo from the camera or phone again.',
  'cut-off': 'The photo ends too early: copying it stopped half-way. Copy it from the camera or phone again.',
  broken: 'The photo is damaged and cannot be opened. Copy it from the camera or phone again.',
  'too-many-pixels': `The picture has more than ${MOST_PIXELS / 1e6} megapixels. Send the photo as the camera took it, or reduce it first.`,
  'ended-the-reader':
    'Opening this photo broke down, so it was not taken. Save it anew as JPEG on the camera or phone and send that.',
  'too-many-bytes': `The file is larger than ${MOST_BYTES / 1024 ** 2} MB. Send the photo as the camera took it: a JPEG of 2 to 15 MB is usual.`,
};

/** Refuses a file for a reason that needs no further word. */
export function refusal(reason: keyof typeof HINTS): RefusedPhoto {
  return { ok: false, reason, hint: HINTS[reason] };
}

/** Refuses a file of another kind. `what` words it: "a GIF picture". */
export function notAPhoto(what: string): RefusedPhoto {
  return {
    ok: false,
    reason: 'not-a-photo',
    hint: `This file is ${what}, whatever its name says. Send the photo as JPEG, PNG, WebP or HEIC.`,
  };
}

/** Refuses a picture that shows too little. */
export function tooSmall(widthPx: number, heightPx: number): RefusedPhoto {
  return {
    ok: false,
    reason: 'too-small',
    hint: `The picture is only ${widthPx} × ${heightPx} pixels. Send the photo at the size the camera took it; at least ${LEAST_SIDE_PX} pixels on the shorter side.`,
  };
}
