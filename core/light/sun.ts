import type { Day } from '../day/day.ts';
import { expectation, requireFinite } from '../errors/expect.ts';
import { degOf, radOf, wholeTurn } from '../turned/circular-statistics.ts';

/** The sun's place among the stars at one moment, of which only these two matter to a plant. */
export interface SunAtMoment {
  /** North positive, degrees. */
  readonly declinationDeg: number;
  /** How far a sundial is ahead of a mean clock, minutes. */
  readonly equationOfTimeMin: number;
  readonly rightAscensionDeg: number;
  /** Apparent ecliptic longitude, degrees. */
  readonly longitudeDeg: number;
}

/** Where the sun stands as seen from one place. */
export interface SunInSky {
  /** Compass degrees clockwise from true north, 0 up to 360. */
  readonly bearingDeg: number;
  /** Above the level horizon, degrees, without refraction. */
  readonly elevationDeg: number;
}

/** What one day of sun is like at one latitude. */
export interface Daylight {
  /** 0 in polar night, 24 in polar day. */
  readonly dayLengthHours: number;
  /** `null` when the sun does not rise or does not set. */
  readonly sunriseBearingDeg: number | null;
  readonly sunsetBearingDeg: number | null;
  /** Elevation at solar noon, degrees; below 0 in polar night. */
  readonly noonElevationDeg: number;
}

/**
 * Height of the sun's middle when its upper edge is seen on a level horizon: 34′ of refraction and 16′ of half its width.
 * Almanacs use it for sunrise and sunset.
 */
export const RISE_ELEVATION_DEG = -0.8333;

/** Julian day of 2000-01-01 12:00. */
const J2000 = 2_451_545;

/**
 * The sun at one moment.
 *
 * @param julianDay in dynamical time; UT serves as well (the sun moves 0.001° in the minute between them)
 *
 * Notes: good to 0.01° between 1900 and 2100.
 *
 * Reference: Meeus (1998), Astronomical Algorithms, ch. 25 (low accuracy) and ch. 28 (equation of time).
 *
 * Example: 1992 October 13.0 (2448908.5) has declination −7.785° and a sundial 13.71 minutes ahead.
 */
export function sunAt(julianDay: number): SunAtMoment {
  requireFinite(julianDay, 'julianDay');
  const centuries = (julianDay - J2000) / 36_525;
  const meanLongitude = 280.46646 + centuries * (36_000.76983 + centuries * 0.0003032);
  const anomaly = radOf(357.52911 + centuries * (35_999.05029 - centuries * 0.0001537));
  const centre =
    (1.914602 - centuries * (0.004817 + centuries * 0.000014)) * Math.sin(anomaly) +
    (0.019993 - centuries * 0.000101) * Math.sin(2 * anomaly) +
    0.000289 * Math.sin(3 * anomaly);
  const node = radOf(125.04 - 1934.136 * centuries);
  const longitudeDeg = wholeTurn(meanLongitude + centre - 0.00569 - 0.00478 * Math.sin(node));
  const obliquity = radOf(
    23.4392911 -
      centuries * (0.0130041667 + centuries * (1.64e-7 - centuries * 5.036e-7)) +
      0.00256 * Math.cos(node),
  );
  const longitude = radOf(longitudeDeg);
  const rightAscensionDeg = wholeTurn(
    degOf(Math.atan2(Math.cos(obliquity) * Math.sin(longitude), Math.cos(longitude))),
  );
  const nutation = -0.00478 * Math.sin(node) * Math.cos(obliquity);
  const ahead = wholeTurn(meanLongitude - 0.0057183 - rightAscensionDeg + nutation + 180) - 180;
  return {
    declinationDeg: degOf(Math.asin(Math.sin(obliquity) * Math.sin(longitude))),
    equationOfTimeMin: 4 * ahead,
    rightAscensionDeg,
    longitudeDeg,
  };
}

/** The sun at 12:00 UT of a day. Elsewhere noon is up to half a day off: 0.2° of declination at most. */
export function sunOnDay(day: Day): SunAtMoment {
  return sunAt(julianDayOf(day) + 0.5);
}

/** Julian day of 0:00 UT. Reference: Meeus, ch. 7. */
export function julianDayOf(day: Day): number {
  const [fullYear, fullMonth, date] = day.split('-').map(Number) as [number, number, number];
  const [year, month] = fullMonth > 2 ? [fullYear, fullMonth] : [fullYear - 1, fullMonth + 12];
  const century = Math.floor(year / 100);
  const gregorian = 2 - century + Math.floor(century / 4);
  return Math.floor(365.25 * (year + 4716)) + Math.floor(30.6001 * (month + 1)) + date + gregorian - 1524.5;
}

/**
 * Where the sun stands.
 *
 * @param latitudeDeg north positive, −90 to 90
 * @param declinationDeg the sun's
 * @param solarHour hour by the sundial: 12 when the sun stands highest
 *
 * Reference: Meeus, ch. 13.
 */
export function sunInSky(latitudeDeg: number, declinationDeg: number, solarHour: number): SunInSky {
  requireLatitude(latitudeDeg);
  const latitude = radOf(latitudeDeg);
  const declination = radOf(declinationDeg);
  const hourAngle = radOf(15 * (solarHour - 12));
  const up =
    Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle);
  const north =
    Math.cos(latitude) * Math.sin(declination) -
    Math.sin(latitude) * Math.cos(declination) * Math.cos(hourAngle);
  const east = -Math.cos(declination) * Math.sin(hourAngle);
  return {
    bearingDeg: wholeTurn(degOf(Math.atan2(east, north))),
    elevationDeg: degOf(Math.asin(Math.min(1, Math.max(-1, up)))),
  };
}

/**
 * Length of the day and where the sun rises and sets.
 *
 * @param latitudeDeg north positive, −90 to 90
 * @param declinationDeg the sun's
 * @param riseElevationDeg elevation of the sun's middle that counts as risen; 0 is the geometric horizon
 *
 * Notes: over a level horizon; the sun's drift in declination during the day (0.4° at most) is left out.
 *
 * Reference: Meeus, ch. 15.
 */
export function daylight(
  latitudeDeg: number,
  declinationDeg: number,
  riseElevationDeg = RISE_ELEVATION_DEG,
): Daylight {
  const noonElevationDeg = sunInSky(latitudeDeg, declinationDeg, 12).elevationDeg;
  const latitude = radOf(latitudeDeg);
  const declination = radOf(declinationDeg);
  const cosine =
    (Math.sin(radOf(riseElevationDeg)) - Math.sin(latitude) * Math.sin(declination)) /
    (Math.cos(latitude) * Math.cos(declination));
  if (!(cosine > -1 && cosine < 1)) {
    const dayLengthHours = noonElevationDeg > riseElevationDeg ? 24 : 0;
    return { dayLengthHours, sunriseBearingDeg: null, sunsetBearingDeg: null, noonElevationDeg };
  }
  const halfDay = degOf(Math.acos(cosine)) / 15;
  return {
    dayLengthHours: 2 * halfDay,
    sunriseBearingDeg: sunInSky(latitudeDeg, declinationDeg, 12 - halfDay).bearingDeg,
    sunsetBearingDeg: sunInSky(latitudeDeg, declinationDeg, 12 + halfDay).bearingDeg,
    noonElevationDeg,
  };
}

function requireLatitude(latitudeDeg: number): void {
  if (!(latitudeDeg >= -90 && latitudeDeg <= 90)) {
    throw new RangeError(expectation('−90 to 90', 'latitudeDeg', latitudeDeg));
  }
}
