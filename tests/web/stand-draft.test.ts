import { describe, expect, it } from 'vitest';
import { lengthEntryOf, lengthWords, readLengthMm } from '../../web/src/stand/length-entry.ts';
import { stepOfFault } from '../../web/src/stand/set-up-steps.ts';
import { changedParts, EMPTY_STAND, readStand } from '../../web/src/stand/stand-draft.ts';

const NAMED = { ...EMPTY_STAND, name: 'Shed bench' };
const FAULT = 'Give the distance as a number, for example 180 cm.';

describe('a length as typed', () => {
  it.each([
    ['180', 1800],
    ['180 cm', 1800],
    ['1,8 m', 1800],
    ['1800mm', 1800],
    [' 12.5 ', 125],
    ['-3', -30],
    ['0', 0],
  ])('%j is %d mm', (words, mm) => {
    expect(readLengthMm(words, FAULT)).toEqual({ ok: true, mm });
  });

  it('may be left out, which is not the same as nought', () => {
    expect(readLengthMm('  ', FAULT)).toEqual({ ok: true, mm: null });
  });

  it.each(['two steps', '1.8.0', '180 yd', '--3'])('%j is sent back with its sentence', (words) => {
    expect(readLengthMm(words, FAULT)).toEqual({ ok: false, fault: FAULT });
  });

  it('is read back as on a tape', () => {
    expect(lengthWords(1800)).toBe('1.8 m');
    expect(lengthWords(2000)).toBe('2 m');
    expect(lengthWords(120)).toBe('12 cm');
    expect(lengthWords(-300)).toBe('-30 cm');
  });
});

describe('a stand as typed', () => {
  it('needs no more than a name; what was not said is not known', () => {
    expect(readStand(NAMED)).toEqual({
      ok: true,
      form: {
        name: 'Shed bench',
        lightSide: null,
        latitudeDeg: null,
        lightBearingDeg: null,
        backdrop: null,
        cameraDistanceMm: null,
        cameraHeightMm: null,
        scaleFrom: 'none',
        sheet: null,
      },
    });
  });

  it('needs to know how far the pot stands before a sheet on the backdrop', () => {
    const read = readStand({ ...NAMED, scaleFrom: 'sheet' });
    expect(read.ok ? null : stepOfFault(read.fields)).toBe('scale');
    expect(readStand({ ...NAMED, scaleFrom: 'sheet', plantInFront: '15' })).toMatchObject({
      ok: true,
      form: { sheet: { paper: 'A4', place: 'backdrop', plantInFrontMm: 150 } },
    });
  });

  it('takes a sheet on the bench as under the pot when no distance is given', () => {
    expect(readStand({ ...NAMED, scaleFrom: 'sheet', sheetPlace: 'bench' })).toMatchObject({
      ok: true,
      form: { sheet: { place: 'bench', plantInFrontMm: 0 } },
    });
  });

  it('forgets the sheet’s distance when the scale comes from elsewhere', () => {
    expect(readStand({ ...NAMED, scaleFrom: 'rim', plantInFront: 'far' })).toMatchObject({
      ok: true,
      form: { sheet: null },
    });
  });

  it('leads to the first step with an entry that cannot be read', () => {
    const read = readStand({ ...EMPTY_STAND, distance: 'far', scaleFrom: 'sheet' });
    expect(read).toMatchObject({
      ok: false,
      fields: { name: expect.stringContaining('name'), cameraDistanceMm: FAULT },
    });
    expect(read.ok ? null : stepOfFault(read.fields)).toBe('camera');
  });
});

describe('a changed stand', () => {
  const before = { ...NAMED, distance: '180', backdrop: 'Dark plain cloth' };
  const change = (now: typeof before) => {
    const read = readStand(now);
    if (!read.ok) throw new TypeError('Expected a stand that can be read');
    return changedParts(before, now, read.form);
  };

  it('sends only what was touched, so that nothing else makes a new version', () => {
    expect(change({ ...before, lightSide: 'left' })).toEqual({ lightSide: 'left' });
    expect(change({ ...before, distance: '200' })).toEqual({ cameraDistanceMm: 2000 });
    expect(change(before)).toEqual({});
  });

  it('sends scale and sheet together', () => {
    expect(change({ ...before, scaleFrom: 'sheet', plantInFront: '20', paper: 'Letter' })).toEqual({
      scaleFrom: 'sheet',
      sheet: { paper: 'Letter', place: 'backdrop', plantInFrontMm: 200 },
    });
  });
});

describe('a stand typed in inches', () => {
  it('takes a bare number as inches, and shows what is kept so', () => {
    const read = readStand({
      ...NAMED,
      tape: 'in',
      distance: '71',
      scaleFrom: 'sheet',
      plantInFront: '6 cm',
    });
    if (!read.ok) throw new TypeError('Expected a stand that can be read');
    expect(read.form).toMatchObject({ cameraDistanceMm: 1803, sheet: { plantInFrontMm: 60 } });
    expect(lengthEntryOf(read.form.cameraDistanceMm, 'in')).toBe('71');
    expect(lengthEntryOf(1800, 'cm')).toBe('180');
    expect(lengthEntryOf(null, 'in')).toBe('');
  });
});
