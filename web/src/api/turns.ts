import type { TurnRhythm } from '../../../core/light/next-turn.ts';
import type { Turn } from '../../../server/schemas/light.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

/** A turn as it is sent; the server reads the day. */
export interface TurnToSend {
  readonly day: string;
  readonly facesLightDeg: number;
  readonly note?: string;
}

/** Writes down a turn of the pot; can be taken back. */
export async function recordTurn(plantId: string, form: TurnToSend, words: string): Promise<void> {
  const turn = await fetchJson<Turn>(`/plants/${plantId}/turns`, { method: 'POST', json: form });
  await refresh(plantId);
  offerUndo(words, async () => {
    await fetchJson(`/turns/${turn.id}`, { method: 'DELETE' });
    await refresh(plantId);
  });
}

export async function changeTurn(plantId: string, turnId: string, form: TurnToSend): Promise<void> {
  await fetchJson<Turn>(`/turns/${turnId}`, { method: 'PATCH', json: form });
  await refresh(plantId);
}

export async function removeTurn(plantId: string, turnId: string): Promise<void> {
  await fetchJson(`/turns/${turnId}`, { method: 'DELETE' });
  await refresh(plantId);
  offerUndo('The turn is removed.', async () => {
    await fetchJson(`/turns/${turnId}/restore`, { method: 'POST' });
    await refresh(plantId);
  });
}

export async function changeRhythm(plant: Plant, turnRhythm: TurnRhythm): Promise<void> {
  const put = async (rhythm: TurnRhythm) => {
    await fetchJson<Plant>(`/plants/${plant.id}`, { method: 'PATCH', json: { turnRhythm: rhythm } });
    await refresh(plant.id);
  };
  await put(turnRhythm);
  offerUndo('The rhythm of turning is changed.', () => put(plant.turnRhythm));
}
