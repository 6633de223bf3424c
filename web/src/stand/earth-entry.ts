export type DegEntry =
  | { readonly ok: true; readonly deg: number | null }
  | { readonly ok: false; readonly fault: string };

const LATITUDE_FAULT = 'Give the latitude in degrees, for example 52 N or 33 S.';
const BEARING_FAULT = 'Give degrees from 0 to 359, or a point of the compass, for example 200 or SSW.';

/** Reads "52", "52.3 N", "33,5 S" or "52° 18′ N" into degrees, north positive; nothing is not known. */
export function readLatitudeDeg(words: string): DegEntry {
  const said = words.trim().toUpperCase().replace(',', '.');
  if (said === '') return { ok: true, deg: null };
  const [, sign = '', whole, minutes = '0', half = ''] =
    /^([+−-]?)\s*(\d+(?:\.\d+)?)\s*°?\s*(?:(\d+(?:\.\d+)?)\s*['′]\s*)?(N|S)?$/.exec(said) ?? [];
  const deg = Number(whole) + Number(minutes) / 60;
  // A south said twice, by sign and by letter, is more likely a slip than a north.
  if (whole === undefined || Number(minutes) >= 60 || deg > 90 || (sign !== '' && half !== '')) {
    return { ok: false, fault: LATITUDE_FAULT };
  }
  return { ok: true, deg: half === 'S' || sign === '-' || sign === '−' ? -deg : deg };
}

/** The sixteen points, from north on clockwise. */
const POINTS = 'N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW'.split(' ');

/** Reads "200", "200°" or "SSW" into compass degrees, clockwise from true north; nothing is not known. */
export function readBearingDeg(words: string): DegEntry {
  const said = words.trim().toUpperCase().replace(',', '.').replace(/\s*°$/, '');
  if (said === '') return { ok: true, deg: null };
  const point = POINTS.indexOf(said);
  if (point >= 0) return { ok: true, deg: 22.5 * point };
  const deg = Number(said);
  if (!(deg >= 0 && deg <= 360)) return { ok: false, fault: BEARING_FAULT };
  return { ok: true, deg: deg % 360 };
}

/** The latitude as it is typed: "52.3 N". */
export function latitudeEntryOf(deg: number | null): string {
  if (deg === null) return '';
  return `${Math.round(Math.abs(deg) * 100) / 100} ${deg < 0 ? 'S' : 'N'}`;
}

/** The bearing as it is typed: the point of the compass where it is one, else degrees. */
export function bearingEntryOf(deg: number | null): string {
  if (deg === null) return '';
  return POINTS[deg / 22.5] ?? String(Math.round(deg * 10) / 10);
}
