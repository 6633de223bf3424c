import { isDay } from '../../../core/day/day.ts';
import type { Show, ShowClass } from '../../../core/season/show.ts';
import type { ShowForm } from '../../../server/schemas/show.ts';

/** One class as typed. */
export interface ClassDraft {
  /** Of a class that the show has already, else `null`. */
  readonly id: string | null;
  /** Tells rows of the form apart. */
  readonly row: number;
  readonly name: string;
  readonly pot: string;
  readonly widest: string;
  readonly tallest: string;
  readonly rules: string;
}

/** A show as typed, before it is one. */
export interface ShowDraft {
  readonly name: string;
  readonly day: string;
  readonly place: string;
  readonly rules: string;
  readonly classes: readonly ClassDraft[];
}

export const EMPTY_SHOW: ShowDraft = { name: '', day: '', place: '', rules: '', classes: [] };

/** The limits of a class, by the entry on the form and the field that it fills. */
export const LIMITS = [
  { entry: 'pot', field: 'potMm', label: 'Widest pot rim' },
  { entry: 'widest', field: 'widestMm', label: 'Widest plant' },
  { entry: 'tallest', field: 'tallestMm', label: 'Tallest plant' },
] as const;

export function showDraftOf({ name, day, place, rules, classes }: Show): ShowDraft {
  return { name, day, place, rules, classes: classes.map(classDraftOf) };
}

export function emptyClass(classes: readonly ClassDraft[]): ClassDraft {
  const row = Math.max(0, ...classes.map((one) => one.row)) + 1;
  return { id: null, row, name: '', pot: '', widest: '', tallest: '', rules: '' };
}

function classDraftOf({ id, name, potMm, widestMm, tallestMm, rules }: ShowClass, row: number): ClassDraft {
  const typed = (mm: number | null) => (mm === null ? '' : String(mm));
  return { id, row, name, pot: typed(potMm), widest: typed(widestMm), tallest: typed(tallestMm), rules };
}

/** Reads the draft, or says which entry cannot be read, by the path of its field. */
export function readShow(
  draft: ShowDraft,
): { ok: true; form: ShowForm } | { ok: false; fields: Record<string, string> } {
  const fields: Record<string, string> = {};
  if (!isDay(draft.day)) fields.day = 'Choose the day of the show.';
  const classes = draft.classes.map((one, index) => {
    const limits = { potMm: one.pot, widestMm: one.widest, tallestMm: one.tallest };
    const read = Object.entries(limits).map(([field, typed]) => {
      const mm = readMm(typed);
      if (Number.isNaN(mm)) fields[`classes/${index}/${field}`] = 'Give millimetres, for example 450.';
      return [field, mm];
    });
    return {
      ...(one.id === null ? {} : { id: one.id }),
      name: one.name,
      rules: one.rules,
      ...(Object.fromEntries(read) as Record<keyof typeof limits, number | null>),
    };
  });
  if (Object.keys(fields).length > 0) return { ok: false, fields };
  const { name, place, rules } = draft;
  return { ok: true, form: { name, day: draft.day as ShowForm['day'], place, rules, classes } };
}

/** Nothing is no limit; a comma is taken as a decimal point. */
function readMm(typed: string): number | null {
  const bare = typed
    .trim()
    .replace(/\s*mm$/i, '')
    .replace(',', '.');
  return bare === '' ? null : Number(bare);
}
