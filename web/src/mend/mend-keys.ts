/** What a key asks of the mending tool. */
export type KeyAct =
  | { readonly what: 'step'; readonly by: readonly [number, number]; readonly far: boolean }
  | { readonly what: KeyWord };

export type KeyWord =
  | 'press'
  | 'keep'
  | 'remove'
  | 'wider'
  | 'narrower'
  | 'next-zone'
  | 'zone-in'
  | 'zone-out'
  | 'closer'
  | 'farther'
  | 'undo'
  | 'redo';

const STEPS: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const LETTERS: Record<string, KeyWord> = {
  k: 'keep',
  r: 'remove',
  n: 'next-zone',
  i: 'zone-in',
  o: 'zone-out',
  z: 'closer',
  x: 'farther',
  '+': 'wider',
  '=': 'wider',
  '-': 'narrower',
};

/** Reads a key. Arrows, space and enter speak only to the photo (`onPhoto`): buttons have their own use for them. */
export function readKey(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
  onPhoto: boolean,
): KeyAct | null {
  const letter = event.key.toLowerCase();
  if (event.altKey) return null;
  if (event.ctrlKey || event.metaKey) {
    if (letter === 'z') return { what: event.shiftKey ? 'redo' : 'undo' };
    return letter === 'y' ? { what: 'redo' } : null;
  }
  const by = STEPS[event.key];
  if (by) return onPhoto ? { what: 'step', by, far: event.shiftKey } : null;
  if (event.key === ' ' || event.key === 'Enter') return onPhoto ? { what: 'press' } : null;
  const what = LETTERS[letter];
  return what ? { what } : null;
}
