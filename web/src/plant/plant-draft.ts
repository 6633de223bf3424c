import { isDay } from '../../../core/day/day.ts';
import type { Plant, PlantForm } from '../../../server/schemas/plant.ts';

/** The form as typed, before it is a plant. */
export interface PlantDraft {
  readonly name: string;
  readonly kind: PlantForm['kind'];
  readonly variety: string;
  readonly rim: string;
  readonly showDay: string;
  /** Empty for none; null before it was looked at. */
  readonly standId: string | null;
}

export const EMPTY_DRAFT: PlantDraft = {
  name: '',
  kind: 'regal',
  variety: '',
  rim: '',
  showDay: '',
  standId: null,
};

export function draftOf(plant: Plant): PlantDraft {
  return {
    name: plant.name,
    kind: plant.kind,
    variety: plant.variety,
    rim: plant.rimMm === null ? '' : String(plant.rimMm),
    showDay: plant.showDay ?? '',
    standId: plant.standId ?? '',
  };
}

/** Reads the draft, or says which entry cannot be read. A comma is taken as a decimal point. */
export function readDraft(
  draft: PlantDraft,
): { ok: true; form: PlantForm } | { ok: false; fields: Record<string, string> } {
  const rim = draft.rim
    .trim()
    .replace(/\s*mm$/i, '')
    .replace(',', '.');
  const rimMm = rim === '' ? null : Number(rim);
  if (rimMm !== null && !Number.isFinite(rimMm)) {
    return { ok: false, fields: { rimMm: 'Give the pot rim in millimetres, for example 130.' } };
  }
  if (draft.showDay !== '' && !isDay(draft.showDay)) {
    return { ok: false, fields: { showDay: 'Give a day as YYYY-MM-DD, for example 2026-03-08.' } };
  }
  return {
    ok: true,
    form: {
      name: draft.name,
      kind: draft.kind,
      variety: draft.variety,
      rimMm,
      showDay: draft.showDay === '' ? null : draft.showDay,
      standId: draft.standId || null,
    },
  };
}
