import type { OpenCvDoor } from '../opencv/door.ts';
import { meanPlane, resizeMask, resizePlane, shrinkRaster } from '../opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import type { Mask, Raster } from '../raster/raster.ts';
import { backdropDistance } from './backdrop-distance.ts';
import { colourContrast, type Lessons } from './colour-contrast.ts';
import { type Evidence, joinEvidence, voiced } from './evidence.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import {
  colourSteps,
  firstLessons,
  LEAF_ROUGHNESS,
  lessonsFromPot,
  lessonsFromShares,
  potBody,
  sideEdges,
} from './pot-clues.ts';
import { potInShares } from './pot-in-shares.ts';
import { findPotShape, type PlantColumn, type PotShape } from './pot-shape.ts';

/** Longer side of the copy on which the pot is looked for, px. */
const SEARCH_SIDE_PX = 256;

/** The general opinion on plant colours may not outshout what this photo teaches. */
const GENERAL_MOST = 2;

/** What the pot is looked for in, all of one size. */
export interface PotScene {
  readonly raster: Raster;
  readonly picture: LabPicture;
  /** The backdrop expected everywhere and its spread; `null` in a busy place. */
  readonly backdrop: { readonly colour: LabPicture; readonly spread: number } | null;
  /** A trained network's opinion of every pixel; absent or `null` to do without. */
  readonly shares?: PixelShares | null;
  readonly object: Evidence;
  readonly mask: Mask;
  /** Opinion by colour alone on plant against pot. */
  readonly plant: Evidence;
}

/** The pot's body, and the opinion on plant against pot that was learned from it. */
export interface PotFinding {
  readonly pot: PotShape | null;
  readonly plant: Evidence;
  /** Mean change of colour from pixel to pixel nearby, ΔE. */
  readonly roughness: Float32Array;
}

/**
 * Looks for the pot: in the network's shares where there are any, else before a known backdrop by colour, smoothness
 * and shape. In a busy place without the network none is looked for. The shape is in px of the scene.
 */
export function findPot(door: OpenCvDoor, scene: PotScene): PotFinding {
  const roughness = meanPlane(door, colourSteps(scene.picture), scene.picture, 2);
  if (scene.shares) {
    const plant = plantBeside(scene, lessonsFromShares(scene.shares));
    return { pot: potInShares(door, scene.shares), plant, roughness };
  }
  if (scene.backdrop === null) return { pot: null, plant: scene.plant, roughness };
  return searchPot(door, scene, faintDifference(scene.picture, scene.backdrop), roughness);
}

/** Opinion on plant against pot: colours in general, and as learned from this photo's canopy and pot. */
function plantBeside(scene: PotScene, lessons: Lessons): Evidence {
  const learned = { ...scene.plant, logOdds: colourContrast(scene.picture, lessons) };
  return joinEvidence(voiced(scene.plant, 1, GENERAL_MOST), learned);
}

/**
 * Looks for the pot twice: first with colours learned from the object's top and foot, then with those learned from
 * the body found, which corrects a rim taken too high or too low.
 */
function searchPot(
  door: OpenCvDoor,
  scene: PotScene,
  faint: Float32Array,
  roughness: Float32Array,
): PotFinding {
  const look = (lessons: Lessons): PotFinding => {
    const plant = plantBeside(scene, lessons);
    const body = potBody({ object: scene.object, plant, roughness, faint });
    return { pot: shapeIn(door, scene, body), plant, roughness };
  };
  const first = look(firstLessons(scene.mask));
  if (first.pot === null) return first;
  const second = look(lessonsFromPot(scene.mask, first.pot));
  return second.pot !== null && isFullOfLeaf(scene, second.pot, roughness) ? { ...first, pot: null } : second;
}

/** Share of a body that may look like leaf, a green pot being smooth. */
const MOST_LEAF_SHARE = 0.45;

/** Whether what was taken for a pot is mostly rough and leaf-coloured: then it is the plant itself. */
function isFullOfLeaf({ plant, picture }: PotScene, pot: PotShape, roughness: Float32Array): boolean {
  let [inside, leaf] = [0, 0];
  for (let y = Math.max(0, Math.round(pot.topY)); y < Math.min(picture.height, pot.bottomY); y++) {
    for (let x = 0; x < picture.width; x++) {
      if (Math.abs(x - pot.centreX) > pot.bottomHalf) continue;
      const i = y * picture.width + x;
      inside++;
      if ((plant.logOdds[i] as number) > 0.5 && (roughness[i] as number) > 0.3 * LEAF_ROUGHNESS) leaf++;
    }
  }
  return leaf > MOST_LEAF_SHARE * inside;
}

function shapeIn(door: OpenCvDoor, scene: PotScene, body: Float32Array): PotShape | null {
  const small = shrinkRaster(door, scene.raster, SEARCH_SIDE_PX);
  const shape = findPotShape(
    { ...small, body: resizePlane(door, body, scene.picture, small), side: sideEdges(labOfRaster(small)) },
    resizeMask(door, scene.mask, small),
    plantColumn(scene, small.width / scene.picture.width),
  );
  if (shape === null) return null;
  const scale = scene.picture.width / small.width;
  return {
    centreX: shape.centreX * scale,
    topY: shape.topY * scale,
    bottomY: (shape.bottomY + 1) * scale,
    topHalf: shape.topHalf * scale,
    bottomHalf: shape.bottomHalf * scale,
    score: shape.score,
  };
}

/** Middle and reach of the leaf-coloured part of the object, `scale` px per px of the scene; `null` without leaves. */
function plantColumn({ mask, plant, picture }: PotScene, scale: number): PlantColumn | null {
  let [count, sum, squares] = [0, 0, 0];
  for (let i = 0; i < mask.data.length; i++) {
    if (mask.data[i] === 0 || (plant.logOdds[i] as number) <= 0) continue;
    const x = i % picture.width;
    count++;
    sum += x;
    squares += x * x;
  }
  if (count < 20) return null;
  const middle = sum / count;
  // Twice the standard deviation is the half-width of a disc.
  const reach = 2 * Math.sqrt(Math.max(1, squares / count - middle * middle));
  return { middleX: middle * scale, reach: reach * scale };
}

function faintDifference(
  picture: LabPicture,
  backdrop: { colour: LabPicture; spread: number },
): Float32Array {
  const faint = new Float32Array(picture.l.length);
  const least = 0.8 + 1.5 * backdrop.spread;
  const distance = backdropDistance(picture, backdrop.colour);
  for (let i = 0; i < faint.length; i++) {
    faint[i] = Math.max(0, Math.min(1, ((distance[i] as number) - least) / 2));
  }
  return faint;
}
