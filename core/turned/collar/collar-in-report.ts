import type { Pot } from '../../canopy/found-plant.ts';
import type { Raster } from '../../raster/raster.ts';
import type { CollarTurn } from '../../report.ts';
import { turnBetween } from '../circular-statistics.ts';
import { clockOfAzimuth } from '../clock-of-azimuth.ts';
import { type CollarReading, type NoCollar, readCollar } from './read-collar.ts';

/** What is known of pot and camera; `null` when not told. */
export interface KnownOfCollar {
  readonly rimMm: number | null;
  readonly cameraDistanceMm: number | null;
}

/** A turn told this far from the collar's, or past its plus-minus where that is more, is probably a slip, degrees. */
const SLIP_DEG = 15;

/** Reads the turn collar on the pot that was found; `null` without a pot. */
export function collarOnPot(
  raster: Raster,
  pot: Pot | null,
  { rimMm, cameraDistanceMm }: KnownOfCollar,
): CollarReading | NoCollar | null {
  if (pot === null) return null;
  const { centrePx, halfWidthPx } = pot.rim;
  if (!(halfWidthPx > 0)) return null;
  const isFarOff = rimMm !== null && cameraDistanceMm !== null && cameraDistanceMm > 2 * rimMm;
  return readCollar(
    raster,
    { centrePx, halfWidthPx },
    isFarOff ? { nearness: rimMm / 2 / cameraDistanceMm } : {},
  );
}

/** The report's entry: only what is sure. */
export function collarInReport(reading: CollarReading | NoCollar | null): CollarTurn | null {
  if (!reading?.ok) return null;
  return { turnDeg: reading.turnDeg, plusMinusDeg: reading.plusMinusDeg, marks: reading.marksRead };
}

/** What is to be said of the collar: that it cannot be read, or that it reads another turn than was told. */
export function collarNotes(
  reading: CollarReading | NoCollar | null,
  toldTurnDeg: number | null,
): readonly string[] {
  if (reading === null) return [];
  if (!reading.ok) return reading.hint === null ? [] : [reading.hint];
  if (toldTurnDeg === null) return [];
  const apart = Math.abs(turnBetween(toldTurnDeg, reading.turnDeg));
  if (apart <= Math.max(SLIP_DEG, 2 * reading.plusMinusDeg)) return [];
  const hour = clockOfAzimuth(reading.turnDeg);
  return [
    `The turn collar shows the ${hour} o’clock side to the camera (${Math.round(reading.turnDeg)}°), but ${Math.round(toldTurnDeg)}° was told. Check the turn.`,
  ];
}
