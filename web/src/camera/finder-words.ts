import { isTurned, type LayOver } from './lay-over.ts';

/** Below this many px on the shorter side an ordinary photo shows more than the live picture. */
const FINE_ENOUGH_PX = 1000;

/** "ring marks, pot rim and outline". */
function listed(things: readonly string[]): string {
  const [last, ...before] = things.toReversed();
  return before.length === 0 ? `${last}` : `${before.toReversed().join(', ')} and ${last}`;
}

/** What to do before the shot; `size` is the live picture's, `null` until the camera runs. */
export function finderWords(layOver: LayOver | null, size: { width: number; height: number } | null): string {
  if (!size) return 'Starting the camera…';
  if (layOver && isTurned(layOver, size))
    return 'Turn the phone: the photos before were taken the other way up.';
  const coarse =
    Math.min(size.width, size.height) < FINE_ENOUGH_PX
      ? ` This camera lends the page ${size.width} × ${size.height} px only; an ordinary photo is finer.`
      : '';
  if (!layOver) return `There is no earlier photo to lay over it. This one is the first.${coarse}`;
  const lines = [
    layOver.marksPx.length > 0 ? 'ring marks' : null,
    layOver.rim ? 'pot rim' : null,
    layOver.outlinePx.length > 0 ? 'outline' : null,
  ].filter((line) => line !== null);
  if (lines.length === 0) {
    return `This plant has no measured photo on its stand yet. Lay “Earlier picture” over: what stands still must meet.${coarse}`;
  }
  return `Move the camera until ${listed(lines)} lie on what you see. The plant has grown; pot and stand have not.${coarse}`;
}
