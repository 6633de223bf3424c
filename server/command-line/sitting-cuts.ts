import type { StemsOfSitting } from '../../core/stems/match-stems.ts';
import type { Stem3D } from '../../core/stems/stem-3d.ts';
import { clockOfAzimuth } from '../../core/turned/clock-of-azimuth.ts';

/** A stem to shorten so that the plant is even, as a sitting's report gives it. */
interface SittingCut {
  readonly azimuthDeg: number;
  /** Above level, seen from the middle of the ball. */
  readonly elevationDeg: number;
  readonly excessMm: number;
  readonly plusMinusMm: number;
  readonly kind: Stem3D['kind'];
  /** Views whose outline shows its tip, from 0. */
  readonly seenIn: readonly number[];
  /** Seen from one direction only. */
  readonly unsure: boolean;
}

/** The cuts of a sitting, longest first; `null` when stems cannot be placed, with the reason in the stems' notes. */
export function sittingCuts({ stems, crown }: StemsOfSitting): SittingCut[] | null {
  if (crown === null) return null;
  return stems.map(({ azimuthDeg, elevationDeg, excessMm, plusMinusMm, kind, seenIn, unsure }) => ({
    azimuthDeg: tenths(azimuthDeg) % 360,
    elevationDeg: tenths(elevationDeg),
    excessMm: tenths(excessMm),
    plusMinusMm: tenths(plusMinusMm),
    kind,
    seenIn,
    unsure,
  }));
}

/** The same as readable text. */
export function sittingCutLines(placed: StemsOfSitting): string[] {
  const cuts = sittingCuts(placed);
  if (cuts === null) return [];
  if (cuts.length === 0) return ['', 'Long stems: none'];
  return ['', 'Long stems (clock from above, mark at 6):', ...cuts.map((cut) => `- ${inWords(cut)}`)];
}

function inWords(cut: SittingCut): string {
  const { azimuthDeg, elevationDeg, excessMm, plusMinusMm, kind, seenIn, unsure } = cut;
  const height = Math.round(elevationDeg);
  const level = height === 0 ? 'level' : `${Math.abs(height)}° ${height > 0 ? 'up' : 'down'}`;
  const views = `${seenIn.length === 1 ? 'view' : 'views'} ${seenIn.map((view) => view + 1).join(', ')}`;
  const place = `${clockOfAzimuth(azimuthDeg)} o’clock (${azimuthDeg.toFixed(0)}°), ${level} from the ball’s middle`;
  return `${kind} at ${place}: ${excessMm.toFixed(0)} ± ${plusMinusMm.toFixed(0)} mm too long, seen in ${views}${unsure ? ' only: unsure' : ''}`;
}

function tenths(value: number): number {
  return Math.round(10 * value) / 10;
}
