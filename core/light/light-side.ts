import type { Day } from '../day/day.ts';
import type { ArrowLight } from '../stand/sheet/sheet-reading.ts';
import { degOf, radOf, turnBetween, wholeTurn } from '../turned/circular-statistics.ts';
import { type Daylight, daylight, sunInSky, sunOnDay } from './sun.ts';

/** What lets the sun in: a window, or the open side of a house. */
export interface Opening {
  /** From the pot towards the middle of the opening, compass degrees clockwise from true north. */
  readonly bearingDeg: number;
  /** How far to either side of its middle the sky is seen from the pot, degrees, up to 180. */
  readonly halfWidthDeg: number;
}

/** The side from which direct sun comes on one day. Bearings are compass degrees clockwise from true north. */
export interface SunSide extends Daylight {
  /** Mean direction of the direct sun; `null` when none comes in, or when its directions cancel out. */
  readonly meanBearingDeg: number | null;
  /** Hours with the sun in the opening and above the horizon, under a clear sky. */
  readonly hours: number;
}

export interface PlaceOfSun {
  /** North positive. */
  readonly latitudeDeg: number;
  /** `null`: the whole sky, as in a greenhouse. */
  readonly opening: Opening | null;
}

/** A window as usually seen from a pot that stands near it. No source: a plain guess, to be changed where known better. */
export const WINDOW_HALF_WIDTH_DEG = 60;

const STEP_HOURS = 1 / 30;
/** Directions that agree less than this point nowhere. */
const LEAST_RESULTANT = 0.02;

/**
 * The side from which direct sun comes.
 *
 * @returns mean bearing, hours and the day's length; deterministic
 *
 * Notes: the mean is weighted by the clear-sky direct light that falls on an upright side: beam × cosine of the elevation. A
 * level horizon, no eaves, no trees; the light of the bare sky is not in it.
 *
 * Reference: clear-sky beam 1353 × 0.7^(air mass^0.678) W/m²: Meinel and Meinel (1976), Applied Solar Energy; air mass:
 * Kasten and Young (1989), Applied Optics 28:4735.
 *
 * Example: at 52° north with the whole sky open the mean is 180° on every day of the year.
 */
export function sunSide({ latitudeDeg, opening, day }: PlaceOfSun & { readonly day: Day }): SunSide {
  const { declinationDeg } = sunOnDay(day);
  let [east, north, total, hours] = [0, 0, 0, 0];
  for (let step = 0; step < Math.round(24 / STEP_HOURS); step++) {
    const { bearingDeg, elevationDeg } = sunInSky(latitudeDeg, declinationDeg, (step + 0.5) * STEP_HOURS);
    if (elevationDeg <= 0 || !isIn(opening, bearingDeg)) continue;
    hours += STEP_HOURS;
    const light = clearBeam(elevationDeg) * Math.cos(radOf(elevationDeg));
    east += light * Math.sin(radOf(bearingDeg));
    north += light * Math.cos(radOf(bearingDeg));
    total += light;
  }
  const points = total > 0 && Math.hypot(east, north) > LEAST_RESULTANT * total;
  return {
    ...daylight(latitudeDeg, declinationDeg),
    meanBearingDeg: points ? wholeTurn(degOf(Math.atan2(east, north))) : null,
    hours,
  };
}

/** How the light's side moves over a list of days. */
export function seasonOfLight(
  place: PlaceOfSun,
  days: readonly Day[],
): readonly (SunSide & { readonly day: Day })[] {
  return days.map((day) => ({ day, ...sunSide({ ...place, day }) }));
}

/**
 * The light's side as degrees anticlockwise from the camera, seen from above the pot.
 *
 * @returns 0 behind the camera, 90 right, 180 behind the plant, 270 left; `null` for above or not told
 */
export function lightFromCameraDeg(side: ArrowLight | null): number | null {
  switch (side) {
    case 'behind-camera':
      return 0;
    case 'right':
      return 90;
    case 'behind-plant':
      return 180;
    case 'left':
      return 270;
    case 'above':
    case null:
      return null;
  }
}

/**
 * A compass bearing as degrees anticlockwise from the camera.
 *
 * @param bearingDeg what to turn over, from the pot
 * @param light one direction known both ways: by compass and from the camera
 *
 * Notes: bearings run clockwise, azimuths anticlockwise.
 */
export function bearingFromCameraDeg(
  bearingDeg: number,
  light: { readonly bearingDeg: number; readonly fromCameraDeg: number },
): number {
  return wholeTurn(light.fromCameraDeg - (bearingDeg - light.bearingDeg));
}

function isIn(opening: Opening | null, bearingDeg: number): boolean {
  return opening === null || Math.abs(turnBetween(opening.bearingDeg, bearingDeg)) <= opening.halfWidthDeg;
}

/** Direct light on a surface that faces the sun, as a share of that outside the air. */
function clearBeam(elevationDeg: number): number {
  const airMass = 1 / (Math.sin(radOf(elevationDeg)) + 0.50572 * (elevationDeg + 6.07995) ** -1.6364);
  return 0.7 ** (airMass ** 0.678);
}
