import type { OpenCvDoor } from '../opencv/door.ts';
import { grabCut, resizePlane, shrinkRaster } from '../opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import type { Raster } from '../raster/raster.ts';
import { colourContrast } from './colour-contrast.ts';
import { type Evidence, joinEvidence } from './evidence.ts';
import { plantColour } from './plant-colour.ts';

/** Longer side of the copy that is cut, px. */
export const CUT_SIDE_PX = 320;
/** GrabCut rounds; more change little. */
const ROUNDS = 3;
/** Border strip that teaches the surroundings, share of the shorter side. */
const STRIP_SHARE = 0.05;

/**
 * A guess at the plant in a busy place: leaf and flower colours near the middle that the border does not show begin a
 * GrabCut (Rother, Kolmogorov, Blake 2004), which draws the outline. Foliage behind the plant misleads it.
 */
export function guessInBusyPlace(door: OpenCvDoor, raster: Raster, picture: LabPicture): Evidence {
  const small = shrinkRaster(door, raster, CUT_SIDE_PX);
  const smallLab = labOfRaster(small);
  const colour = plantColour(smallLab);
  const leafy = { ...colour, logOdds: colour.logOdds.map((odds) => Math.max(-2, Math.min(2, odds))) };
  const centred = nearMiddle(small);
  const contrast = { ...colour, logOdds: colourContrast(smallLab, lessonsOf(small, leafy, centred)) };
  const joined = joinEvidence(leafy, contrast, centred);
  const start = joined.logOdds.map((odds, i) => {
    if (onBorder(small, i, 0.015) && odds < 2) return 0;
    return odds > 3.2 ? 1 : odds < -3 ? 0 : odds > 0.5 ? 3 : 2;
  });
  const cut = hasBothSides(start)
    ? grabCut(door, small, Uint8Array.from(start), ROUNDS)
    : Uint8Array.from(start);
  const decided = Float32Array.from(cut, (value) => (value === 1 || value === 3 ? 3 : -3));
  return {
    width: picture.width,
    height: picture.height,
    logOdds: resizePlane(door, decided, small, picture),
  };
}

/** The middle teaches 1 where it looks like a plant, the border 2. */
function lessonsOf(size: Raster, leafy: Evidence, centred: Evidence): Uint8Array {
  return Uint8Array.from(leafy.logOdds, (odds, i) => {
    if (onBorder(size, i, STRIP_SHARE)) return 2;
    return odds > 0.5 && (centred.logOdds[i] as number) > 0.5 ? 1 : 0;
  });
}

/** 1.5 in the middle, 0 at six tenths of the way to the edge, -2.5 at the middle of an edge. */
function nearMiddle({ width, height }: Raster): Evidence {
  const logOdds = new Float32Array(width * height);
  for (let i = 0; i < logOdds.length; i++) {
    const x = (2 * (i % width)) / width - 1;
    const y = (2 * Math.floor(i / width)) / height - 1;
    logOdds[i] = 1.5 - 4 * (x * x + y * y);
  }
  return { width, height, logOdds };
}

function onBorder({ width, height }: Raster, i: number, share: number): boolean {
  const strip = Math.max(1, Math.round(share * Math.min(width, height)));
  const [x, y] = [i % width, Math.floor(i / width)];
  return x < strip || y < strip || x >= width - strip || y >= height - strip;
}

function hasBothSides(start: Float32Array): boolean {
  return (
    start.some((value) => value === 1 || value === 3) && start.some((value) => value === 0 || value === 2)
  );
}
