import { describe, expect, it } from 'vitest';
import {
  bearingEntryOf,
  latitudeEntryOf,
  readBearingDeg,
  readLatitudeDeg,
} from '../../web/src/stand/earth-entry.ts';

describe('a latitude as typed', () => {
  it.each([
    ['52', 52],
    ['52.3 N', 52.3],
    ['33,5 s', -33.5],
    ['-33.5', -33.5],
    ['52° 30′ N', 52.5],
    ["52°30'", 52.5],
    ['0', 0],
  ])('%j is %d°, north positive', (words, deg) => {
    expect(readLatitudeDeg(words)).toEqual({ ok: true, deg });
  });

  it('may be left out', () => {
    expect(readLatitudeDeg(' ')).toEqual({ ok: true, deg: null });
  });

  it.each(['91', 'here', '52 W', '-33 S', '52° 70′ N'])('%j is sent back with its sentence', (words) => {
    expect(readLatitudeDeg(words)).toEqual({
      ok: false,
      fault: 'Give the latitude in degrees, for example 52 N or 33 S.',
    });
  });

  it('is shown as it is typed', () => {
    for (const deg of [52.3, -33.5, 0])
      expect(readLatitudeDeg(latitudeEntryOf(deg))).toEqual({ ok: true, deg });
    expect(latitudeEntryOf(-33.5)).toBe('33.5 S');
  });
});

describe('where a window looks', () => {
  it.each([
    ['200', 200],
    ['180°', 180],
    ['360', 0],
    ['ssw', 202.5],
    ['N', 0],
    ['nne', 22.5],
  ])('%j is %d° by the compass', (words, deg) => {
    expect(readBearingDeg(words)).toEqual({ ok: true, deg });
  });

  it.each(['361', '-5', 'left', 'SSSW'])('%j is sent back with its sentence', (words) => {
    expect(readBearingDeg(words)).toEqual({
      ok: false,
      fault: 'Give degrees from 0 to 359, or a point of the compass, for example 200 or SSW.',
    });
  });

  it('is shown as it is typed', () => {
    for (const deg of [0, 202.5, 200, 13.4])
      expect(readBearingDeg(bearingEntryOf(deg))).toEqual({ ok: true, deg });
    expect(bearingEntryOf(null)).toBe('');
  });
});
