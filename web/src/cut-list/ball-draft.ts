import { isDay } from '../../../core/day/day.ts';
import type { CutTo } from '../../../server/schemas/cut-to.ts';
import type { Plant } from '../../../server/schemas/plant.ts';

/** The way to cut as typed. */
export interface BallDraft {
  readonly kind: CutTo['kind'];
  readonly width: string;
  readonly widest: string;
  readonly showDay: string;
}

export function ballDraftOf({ cutTo, showDay }: Plant): BallDraft {
  return {
    kind: cutTo.kind,
    width: cutTo.kind === 'width' ? String(cutTo.widthMm) : '',
    widest: cutTo.kind === 'show' ? String(cutTo.widestMm) : '',
    showDay: showDay ?? '',
  };
}

/** Reads the draft, or says which entry cannot be read. A comma is taken as a decimal point. */
export function readBallDraft(
  draft: BallDraft,
): { ok: true; cutTo: CutTo; showDay?: string } | { ok: false; fields: Record<string, string> } {
  switch (draft.kind) {
    case 'even-up':
      return { ok: true, cutTo: { kind: 'even-up' } };
    case 'width': {
      const widthMm = mmOf(draft.width);
      if (widthMm === null) {
        return { ok: false, fields: { width: 'Give the width in millimetres, for example 300.' } };
      }
      return { ok: true, cutTo: { kind: 'width', widthMm } };
    }
    case 'show': {
      const widestMm = mmOf(draft.widest);
      const fields: Record<string, string> = {};
      if (widestMm === null) fields.widest = 'Give the widest in millimetres, for example 300.';
      if (!isDay(draft.showDay))
        fields.showDay = 'Give the day of the show, so that it can be counted back from.';
      if (widestMm === null || !isDay(draft.showDay)) return { ok: false, fields };
      return { ok: true, cutTo: { kind: 'show', widestMm }, showDay: draft.showDay };
    }
  }
}

function mmOf(words: string): number | null {
  const said = words
    .trim()
    .replace(/\s*mm$/i, '')
    .replace(',', '.');
  const mm = Number(said);
  return said === '' || !Number.isFinite(mm) ? null : mm;
}
