import type { RimByHand } from '../../../core/stand/rim-by-hand.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { showView } from './mending.ts';
import { refresh } from './queries.ts';

/** Sets the rim's ends of a photo, or with `null` takes back what was set; receives it measured anew. */
export function sendRim(viewId: string, rim: RimByHand | null): Promise<View> {
  return fetchJson<View>(`/views/${viewId}/rim`, { method: 'PUT', json: { rim } });
}

/** Sets the rim from outside its tool; can be taken back. */
export async function putRim(
  plantId: string,
  view: View,
  rim: RimByHand | null,
  words: string,
): Promise<void> {
  const put = async (next: RimByHand | null) => {
    showView(plantId, await sendRim(view.id, next));
    await refresh(plantId);
  };
  await put(rim);
  offerRimUndo(plantId, view, words);
}

/** Offers to bring the rim back to what it was in `before`. */
export function offerRimUndo(plantId: string, before: View, words: string): void {
  offerUndo(words, async () => {
    showView(plantId, await sendRim(before.id, before.rimByHand));
    await refresh(plantId);
  });
}
