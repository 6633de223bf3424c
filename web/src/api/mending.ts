import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { plantQuery, queryClient, refresh } from './queries.ts';

/** Sends all strokes of a photo and receives it cut and measured anew. */
export function sendStrokes(viewId: string, strokes: readonly Stroke[]): Promise<View> {
  return fetchJson<View>(`/views/${viewId}/strokes`, { method: 'PUT', json: { strokes } });
}

/** Says whether the outline is right; a right one teaches the plant's colours. */
export function sendAccepted(viewId: string, accepted: boolean): Promise<View> {
  return fetchJson<View>(`/views/${viewId}/accepted`, { method: 'PUT', json: { accepted } });
}

/** Has the photo made ready, so that the first stroke is answered as fast as the later ones. */
export function warmUp(viewId: string): Promise<void> {
  return fetchJson(`/views/${viewId}/warm`, { method: 'POST' });
}

/** Puts a view as just answered into its plant's page, before the page is read anew. */
export function showView(plantId: string, view: View): void {
  const withView = (sittings: readonly Sitting[]) =>
    sittings.map((sitting) => ({
      ...sitting,
      views: sitting.views.map((one) => (one.id === view.id ? view : one)),
    }));
  queryClient.setQueryData(
    plantQuery(plantId).queryKey,
    (page) => page && { ...page, sittings: withView(page.sittings) },
  );
  queryClient.setQueriesData<Sitting[]>(
    { queryKey: ['plant', plantId, 'sittings'] },
    (sittings) => sittings && withView(sittings),
  );
}

/** Changes the grower's word on an outline and reads the plant's page anew. */
export async function acceptOutline(plantId: string, viewId: string, accepted: boolean): Promise<void> {
  showView(plantId, await sendAccepted(viewId, accepted));
  await refresh(plantId);
}

/** Adds strokes to a photo's own from outside the mending tool; can be taken back. */
export function addStrokes(
  plantId: string,
  view: View,
  added: readonly Stroke[],
  words: string,
): Promise<void> {
  return changeStrokes(plantId, view, [...view.strokes, ...added], words);
}

/** Takes all strokes of a photo away; can be taken back. */
export function takeStrokesAway(plantId: string, view: View, words: string): Promise<void> {
  return changeStrokes(plantId, view, [], words);
}

async function changeStrokes(
  plantId: string,
  view: View,
  next: readonly Stroke[],
  words: string,
): Promise<void> {
  const put = async (strokes: readonly Stroke[]) => {
    showView(plantId, await sendStrokes(view.id, strokes));
    await refresh(plantId);
  };
  await put(next);
  offerUndo(words, () => put(view.strokes));
}
