import { readFileSync } from 'node:fs';
import { type FoundPlant, PARTS } from '../../core/canopy/found-plant.ts';
import { NOTHING_KNOWN } from '../../core/canopy/known.ts';
import type { Network } from '../../core/canopy/model/onnx-door.ts';
import { gatherPhoto, measureFound, measureGathered, measurePhoto } from '../../core/measure-photo.ts';
import type { Raster } from '../../core/raster/raster.ts';
import type { Ball, PhotoReport } from '../../core/report.ts';
import type { Repeatable } from '../../core/trend/change-since.ts';
import { renderView, type ViewOptions } from '../../sample-images/render/render-view.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';

/** What is asked to repeat; the radius in mm by the rim, in px where its size is not known. */
export const MEASURES = ['roundness', 'symmetry', 'lopsidedness', 'radius'] as const;
export type Measure = (typeof MEASURES)[number];

/** One photo's readings; `null` where the photo was not measured or the measure not known. */
export type Readings = Readonly<Record<Measure, Repeatable | null>>;

/** One photo's readings with and without what its stand tells. */
export interface ShotReadings {
  /** Brought into the frame of the stand's empty photo. */
  readonly framed: Readings;
  /** Nothing known but the photo. */
  readonly alone: Readings;
}

/** Measures a photo file as the product does, the costly half once. */
export async function readingsOf(
  file: string,
  reference: Raster,
  rimMm: number | null,
  network: Network,
): Promise<ShotReadings> {
  const photo = await readUprightPhoto(new Uint8Array(readFileSync(file)));
  const stand = { reference, sheet: null, cameraDistanceMm: null, focalLengthPx: null };
  const options = { ...NOTHING_KNOWN, network, stand, photoName: file, rimMm, turnDeg: null };
  const gathered = await gatherPhoto(photo, options);
  return {
    framed: readings(measureGathered(gathered, []).report),
    alone: readings(measureGathered({ ...gathered, stand: null }, []).report),
  };
}

/** What the undisturbed plant's true outline and rim give, measured as any other. */
export function trueReadings(view: ViewOptions, rimMm: number): Readings {
  const { canopy, truth } = renderView(view);
  const { width, height } = canopy;
  const { rimLeftPx, rimRightPx } = truth.axis;
  const found: FoundPlant = {
    ok: true,
    canopy,
    parts: { width, height, data: canopy.data.map((inside) => inside * PARTS.indexOf('leaf')) },
    pot: {
      rimLeftPx,
      rimRightPx,
      rim: {
        centrePx: [(rimLeftPx[0] + rimRightPx[0]) / 2, (rimLeftPx[1] + rimRightPx[1]) / 2],
        halfWidthPx: (rimRightPx[0] - rimLeftPx[0]) / 2,
        halfHeightPx: 0,
        heightSeen: true,
      },
      rimDoubtPx: 0,
      rimTaper: 0,
    },
    certainty: { width, height, data: new Uint8Array(width * height).fill(255) },
    unsureZones: [],
    confidence: 1,
    edgeUncertaintyPx: 0,
    notes: [],
  };
  const size = { widthPx: width, heightPx: height, rasterWidthPx: width, rasterHeightPx: height };
  const facts = { name: 'truth', ...size, rimMm, turnDeg: null, stand: null, notes: [] };
  return readings(measureFound(found, facts).report);
}

/** The same of a photo of which nothing else is known. */
export async function readingsAlone(file: string, network: Network): Promise<Readings> {
  const photo = await readUprightPhoto(new Uint8Array(readFileSync(file)));
  const options = { ...NOTHING_KNOWN, network, stand: null, photoName: file, rimMm: null, turnDeg: null };
  return readings((await measurePhoto(photo, options)).report);
}

/** Scores of a camera that stands too far from where it stood are not compared, as the product does not. */
function readings({ notCompared, roundness, symmetry, lopsidedness, ball }: PhotoReport): Readings {
  if (notCompared !== null) return { roundness: null, symmetry: null, lopsidedness: null, radius: null };
  const score = (one: { score: number; plusMinus: number } | null) =>
    one === null ? null : { value: one.score, plusMinus: one.plusMinus };
  return {
    roundness: score(roundness),
    symmetry: score(symmetry),
    lopsidedness:
      lopsidedness === null ? null : { value: lopsidedness.percent, plusMinus: lopsidedness.plusMinus },
    radius: ball === null ? null : radiusOf(ball),
  };
}

function radiusOf({ radiusMm, radiusPlusMinusMm, radiusPx, radiusPlusMinusPx }: Ball): Repeatable {
  return radiusMm === null || radiusPlusMinusMm === null
    ? { value: radiusPx, plusMinus: radiusPlusMinusPx }
    : { value: radiusMm, plusMinus: radiusPlusMinusMm };
}
