import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { EMPTY_SHOW, emptyClass, readShow, showDraftOf } from '../../../web/src/shows/show-draft.ts';
import { limitsInWords } from '../../../web/src/shows/show-words.ts';

const DRAFT = { ...EMPTY_SHOW, name: 'Alder Vale', day: '2026-08-13' };
const CLASS = { ...emptyClass([]), name: 'Class 12' };

describe('a show as typed', () => {
  it('may leave limits empty and carry units and decimal commas', () => {
    const read = readShow({ ...DRAFT, classes: [{ ...CLASS, pot: '127,5 mm', widest: ' 450 ' }] });
    expect(read).toMatchObject({
      ok: true,
      form: { day: '2026-08-13', classes: [{ potMm: 127.5, widestMm: 450, tallestMm: null }] },
    });
  });

  it('is sent back with a sentence beside the entry that cannot be read', () => {
    const classes = [CLASS, { ...emptyClass([CLASS]), widest: 'a yard' }];
    expect(readShow({ ...DRAFT, day: '2026-02-30', classes })).toEqual({
      ok: false,
      fields: {
        day: 'Choose the day of the show.',
        'classes/1/widestMm': 'Give millimetres, for example 450.',
      },
    });
  });

  it('keeps the ids of its classes, so that plants stay in them', () => {
    const limits = { potMm: 120, widestMm: null, tallestMm: null, rules: '' };
    const show = {
      ...{ id: 's', name: 'Alder Vale', day: day('2026-08-13'), place: '', rules: '' },
      classes: [{ id: 'c', name: 'Class 12', ...limits }],
    };
    const draft = showDraftOf(show);
    const added = { ...draft, classes: [...draft.classes, { ...emptyClass(draft.classes), name: 'New' }] };
    const read = readShow(added);
    expect(read.ok && read.form.classes.map(({ id, name }) => [id, name])).toEqual([
      ['c', 'Class 12'],
      [undefined, 'New'],
    ]);
  });
});

describe('the limits of a class', () => {
  const none = { id: 'c', name: 'A', potMm: null, widestMm: null, tallestMm: null, rules: '' };
  it('read as a schedule has them', () => {
    expect(limitsInWords({ ...none, potMm: 140, widestMm: 380, tallestMm: 300 })).toBe(
      'Pot up to 140 mm, plant up to 380 mm wide and 300 mm tall',
    );
    expect(limitsInWords({ ...none, tallestMm: 300 })).toBe('Plant up to 300 mm tall');
    expect(limitsInWords(none)).toBeNull();
  });
});
