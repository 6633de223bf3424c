import { colourfulness, hueDeg } from '../colour/hue.ts';
import type { OpenCvDoor } from '../opencv/door.ts';
import { meanPlane } from '../opencv/pictures.ts';
import type { LabPicture } from '../raster/lab.ts';
import { flowerOverFoliage, type PixelShares } from './model/pixel-shares.ts';

/** Hues, degrees, that yellow to bronze petals and leaf without green share; leaf is green from `green` on. */
const HUE = { from: 60, full: 107, green: 112 };
/** Colourfulness up to which such a colour is dead leaf, and from which it is as well petal. */
const COLOUR = { from: 0.42, full: 0.55 };
/** How far around a place its fellows are asked too: a petal and a leaf are wider. Px of the decision copy. */
const REACH_PX = 4;
/** Log odds that the network is too low by where petal and leaf are yellow: chosen on photographs of yellow flowers and on renders of both. */
const SHYNESS = 0.7;

/** Where the colour may be yellow petal as well as leaf that has lost its green, and what the network holds of such places. */
export interface YellowPlaces {
  /** 0 where colour tells, up to 1 where it does not. */
  readonly share: Float32Array;
  /** Log odds of petal over leaf, among places of such a colour nearby. */
  readonly logOdds: Float32Array;
}

/**
 * Yellow petals and yellow leaf are of one colour, so that only shape tells them apart: there the network alone is heard,
 * for a whole patch rather than px by px.
 */
export function yellowPlaces(door: OpenCvDoor, picture: LabPicture, shares: PixelShares): YellowPlaces {
  const share = new Float32Array(picture.l.length);
  const weighed = new Float32Array(share.length);
  for (let i = 0; i < share.length; i++) {
    const yellow = yellowness(picture.l[i] as number, picture.a[i] as number, picture.b[i] as number);
    if (yellow === 0) continue;
    share[i] = yellow;
    weighed[i] = yellow * flowerOverFoliage(shares, i);
  }
  const near = meanPlane(door, share, picture, REACH_PX);
  const logOdds = meanPlane(door, weighed, picture, REACH_PX);
  for (let i = 0; i < share.length; i++) {
    if (share[i] !== 0) logOdds[i] = (logOdds[i] as number) / (near[i] as number) + SHYNESS;
  }
  return { share, logOdds };
}

/** 0 for leaf green, red and what has little colour, 1 for strong yellow, gold and bronze. */
function yellowness(l: number, a: number, b: number): number {
  if (b <= 0 || a > b) return 0;
  const hue = hueDeg(a, b);
  if (hue < HUE.from || hue > HUE.green) return 0;
  const colour = (colourfulness(l, a, b) - COLOUR.from) / (COLOUR.full - COLOUR.from);
  return Math.max(0, Math.min(1, colour, (HUE.green - hue) / (HUE.green - HUE.full)));
}
