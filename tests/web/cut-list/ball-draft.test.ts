import { describe, expect, it } from 'vitest';
import { readBallDraft } from '../../../web/src/cut-list/ball-draft.ts';

const DRAFT = { kind: 'even-up', width: '', widest: '', showDay: '' } as const;

describe('the ball to cut to as typed', () => {
  it('needs nothing more to be evened up', () => {
    expect(readBallDraft(DRAFT)).toEqual({ ok: true, cutTo: { kind: 'even-up' } });
  });

  it('reads a width with its unit and a comma', () => {
    expect(readBallDraft({ ...DRAFT, kind: 'width', width: ' 302,5 mm' })).toEqual({
      ok: true,
      cutTo: { kind: 'width', widthMm: 302.5 },
    });
  });

  it('says of a width that is none what to give', () => {
    for (const width of ['', 'wide', '30 cm']) {
      expect(readBallDraft({ ...DRAFT, kind: 'width', width })).toEqual({
        ok: false,
        fields: { width: 'Give the width in millimetres, for example 300.' },
      });
    }
  });

  it('counts back from the show only with its day', () => {
    const show = { ...DRAFT, kind: 'show', widest: '400' } as const;
    expect(readBallDraft(show)).toMatchObject({
      ok: false,
      fields: { showDay: 'Give the day of the show, so that it can be counted back from.' },
    });
    expect(readBallDraft({ ...show, showDay: '2027-06-12' })).toEqual({
      ok: true,
      cutTo: { kind: 'show', widestMm: 400 },
      showDay: '2027-06-12',
    });
  });
});
