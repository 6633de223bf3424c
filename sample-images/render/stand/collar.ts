import { COLLAR_STEPS } from '../../../core/turned/collar/collar-code.ts';
import { EDGE_MM, HOURS_MM, isUpperDark, ROW_SHARE } from '../../../core/turned/collar/collar-geometry.ts';
import { addPart, addSheet, type Mesh } from '../geometry/mesh.ts';
import { along, azimuthDirection, UP, type Vec3 } from '../geometry/vector.ts';

/** A printed turn collar as a grower put it round the pot. */
export interface CollarSpec {
  /** Rim that it was printed for; the pot's own when it was measured right. */
  readonly printedForMm: number;
  /** Radius at its upper edge. */
  readonly radiusMm: number;
  /** Its upper edge below the rim. */
  readonly dropMm: number;
  /** How much narrower it is at the foot: degrees between its side and the upright. */
  readonly taperDeg: number;
  /** How far its lowest part hangs lower than the middle, and the azimuth of that part. */
  readonly sagMm: number;
  readonly sagAzimuthDeg: number;
  /** Azimuth of the pot where its mark was put: 0 when put on well. */
  readonly offDeg: number;
  /** Linear reflectance of paper and ink. */
  readonly paper: number;
  readonly ink: number;
}

/** A collar put on as its words say. */
export function wellPutCollar(rimMm: number): CollarSpec {
  return {
    printedForMm: rimMm,
    radiusMm: rimMm / 2 + 0.3,
    dropMm: 1.5,
    taperDeg: 0,
    sagMm: 0,
    sagAzimuthDeg: 0,
    offDeg: 0,
    paper: 0.76,
    ink: 0.035,
  };
}

const STEP_DEG = 360 / COLLAR_STEPS;
/** Two flat pieces a step: the chord leaves the circle by 0.03 % of the radius. */
const PIECES_A_STEP = 2;

/** Adds the collar: a patch for each step and row, so that its edges are as sharp as the picture allows. */
export function addCollar(mesh: Mesh, collar: CollarSpec): void {
  const rowMm = ROW_SHARE * collar.printedForMm;
  const middleMm = EDGE_MM + rowMm;
  const heightMm = middleMm + rowMm + HOURS_MM;
  for (let step = 0; step < COLLAR_STEPS; step++) {
    const fromDeg = -180 + step * STEP_DEG;
    const upper = isUpperDark(fromDeg + STEP_DEG / 2);
    addPatch(mesh, collar, fromDeg, [0, EDGE_MM], false);
    addPatch(mesh, collar, fromDeg, [EDGE_MM, middleMm], upper);
    addPatch(mesh, collar, fromDeg, [middleMm, middleMm + rowMm], !upper);
    addPatch(mesh, collar, fromDeg, [middleMm + rowMm, heightMm], false);
  }
  for (let hour = -165; hour < 180; hour += 15) addTick(mesh, collar, hour, heightMm);
}

/** A patch of one step, from and to so far below the upper edge, mm. */
function addPatch(
  mesh: Mesh,
  collar: CollarSpec,
  fromDeg: number,
  [from, to]: readonly [number, number],
  dark: boolean,
): void {
  addArea(mesh, collar, [fromDeg, fromDeg + STEP_DEG], [from, to], dark, PIECES_A_STEP);
}

/** A stroke about as dark as a printed hour, and the mark's long point. */
function addTick(mesh: Mesh, collar: CollarSpec, azimuthDeg: number, heightMm: number): void {
  const halfDeg = (azimuthDeg % 30 === 0 ? 0.9 : 0.5) * (57.3 / (collar.printedForMm / 2));
  const tall = azimuthDeg === 0 ? 5.2 : 3.5;
  // A hair before the paper, so that it is seen.
  const before = { ...collar, radiusMm: collar.radiusMm + 0.15 };
  addArea(mesh, before, [azimuthDeg - halfDeg, azimuthDeg + halfDeg], [heightMm - tall, heightMm], true, 1);
}

function addArea(
  mesh: Mesh,
  collar: CollarSpec,
  [fromDeg, toDeg]: readonly [number, number],
  [from, to]: readonly [number, number],
  dark: boolean,
  pieces: number,
): void {
  const shade = dark ? collar.ink : collar.paper;
  const part = addPart(mesh, {
    material: 'pale',
    canopy: false,
    colour: [shade, shade, shade],
    pattern: [],
    shoot: -1,
    seed: 0,
  });
  const points: Vec3[] = [];
  for (const below of [from, to]) {
    for (let piece = 0; piece <= pieces; piece++) {
      points.push(pointOn(collar, fromDeg + ((toDeg - fromDeg) * piece) / pieces, below));
    }
  }
  const coordinates = points.map((): Vec3 => [0, 0, 0]);
  addSheet(mesh, part, { rows: 2, columns: pieces + 1, points, coordinates });
}

/** A place on the strip, by its printed azimuth and mm below its upper edge, on the pot. */
function pointOn(collar: CollarSpec, printedDeg: number, belowMm: number): Vec3 {
  const { printedForMm, radiusMm, taperDeg, dropMm, sagMm, sagAzimuthDeg, offDeg } = collar;
  // A strip printed for a larger rim laps over itself at the back, where it starts anew under its own end.
  const asWide = (printedDeg * printedForMm) / 2 / radiusMm;
  const azimuth = Math.min(180, Math.max(-180, asWide)) + offDeg;
  const radius = radiusMm - belowMm * Math.tan((taperDeg * Math.PI) / 180);
  const sag = sagMm * Math.cos(((azimuth - sagAzimuthDeg) * Math.PI) / 180);
  const out = azimuthDirection(azimuth);
  return along([out[0] * radius, out[1] * radius, 0], UP, -dropMm - belowMm - sag);
}
