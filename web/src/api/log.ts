import type { z } from 'zod';
import type { noteFormSchema, Sitting, Stop, stopFormSchema } from '../../../server/schemas/sitting.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

/** Writes down what was done or seen with one tap; can be taken back. */
export async function writeInLog(
  plantId: string,
  form: z.input<typeof noteFormSchema>,
  words: string,
): Promise<void> {
  await writeDown(plantId, 'notes', form, words);
}

/** Writes down a stop with one tap; can be taken back. */
export async function writeStop(
  plantId: string,
  form: z.input<typeof stopFormSchema>,
  words: string,
): Promise<void> {
  await writeDown(plantId, 'stops', form, words);
}

/** Keeps a sitting out of trend and advice for a reason, or with `null` takes it in again; can be taken back. */
export async function leaveSittingOut(
  sitting: Pick<Sitting, 'id' | 'plantId' | 'leftOut'>,
  reason: string | null,
): Promise<void> {
  const put = async (leftOut: string | null) => {
    await fetchJson<Sitting>(`/sittings/${sitting.id}`, { method: 'PATCH', json: { leftOut } });
    await refresh(sitting.plantId);
  };
  await put(reason);
  const words = reason === null ? 'The sitting counts again.' : `The sitting is left out: ${reason}.`;
  offerUndo(words, () => put(sitting.leftOut));
}

async function writeDown(
  plantId: string,
  address: 'notes' | 'stops',
  form: object,
  words: string,
): Promise<void> {
  const { id } = await fetchJson<Pick<Stop, 'id'>>(`/plants/${plantId}/${address}`, {
    method: 'POST',
    json: form,
  });
  await refresh(plantId);
  offerUndo(words, async () => {
    await fetchJson(`/${address}/${id}`, { method: 'DELETE' });
    await refresh(plantId);
  });
}
