import { beforeAll, describe, expect, it } from 'vitest';
import type { PartMap } from '../../../core/canopy/found-plant.ts';
import {
  decodeColours,
  encodeColours,
  LEARNING,
  type LearnedColours,
  learnColours,
  learnedColourEvidence,
} from '../../../core/canopy/learned-colours.ts';
import { plantColour } from '../../../core/canopy/plant-colour.ts';
import { labOfRaster } from '../../../core/raster/lab.ts';
import { emptyMask, type Mask, type Raster } from '../../../core/raster/raster.ts';
import { type AwkwardView, awkwardView } from './awkward-series.ts';
import { areaUnderCurve, masked } from './evidence-scores.ts';
import { type Colour, overlap } from './painted-plant.ts';

/** A picture of one colour on the left half, the canopy, and one on the right. */
function halves(canopy: Colour, beside: Colour): { raster: Raster; mask: Mask } {
  const mask = emptyMask(40, 20);
  const data = new Uint8Array(3 * 40 * 20);
  for (let i = 0; i < mask.data.length; i++) {
    mask.data[i] = i % 40 < 20 ? 1 : 0;
    data.set(i % 40 < 20 ? canopy : beside, 3 * i);
  }
  return { raster: { width: 40, height: 20, data }, mask };
}

function learned(...photos: readonly { raster: Raster; mask: Mask }[]): LearnedColours {
  let colours: LearnedColours | null = null;
  for (const { raster, mask } of photos) colours = learnColours(colours, raster, mask);
  if (colours === null) throw new Error('Expected something to be learned');
  return colours;
}

/** The voice on a single colour, seen among the colours of a photo it was learned from. */
function voiceOn(colour: Colour, colours: LearnedColours, among: Raster): number {
  const data = among.data.slice();
  data.set(colour, 0);
  return learnedColourEvidence(labOfRaster({ ...among, data }), colours).logOdds[0] as number;
}

const BRONZE: Colour = [120, 80, 62];
const LEAF: Colour = [80, 125, 55];
const WALL: Colour = [190, 190, 186];
const VIOLET: Colour = [120, 40, 160];

describe('colours learned from an accepted silhouette', () => {
  const photo = halves(BRONZE, WALL);
  const colours = learned(photo);

  it('speak for the canopy and against what lies beside it', () => {
    expect(voiceOn(BRONZE, colours, photo.raster)).toBeGreaterThan(2);
    expect(voiceOn(WALL, colours, photo.raster)).toBeLessThan(-2);
  });

  it('say nothing of a colour met in neither', () => {
    expect(Math.abs(voiceOn(VIOLET, colours, photo.raster))).toBeLessThan(0.05);
  });

  it('say nothing of a colour met in both alike', () => {
    const same = learned(halves(BRONZE, BRONZE));
    expect(Math.abs(voiceOn(BRONZE, same, photo.raster))).toBeLessThan(0.05);
  });

  it('stay within three in log odds however many photos teach', () => {
    const sure = learned(...Array.from({ length: 12 }, () => photo));
    const { logOdds } = learnedColourEvidence(labOfRaster(photo.raster), sure);
    expect(Math.max(...logOdds)).toBeLessThanOrEqual(LEARNING.mostLogOdds);
    expect(Math.min(...logOdds)).toBeGreaterThanOrEqual(-LEARNING.mostLogOdds);
  });

  it('leave what was known as it was when the silhouette is empty or fills the photo', () => {
    const empty = emptyMask(40, 20);
    expect(learnColours(colours, photo.raster, empty)).toBe(colours);
    expect(learnColours(null, photo.raster, empty)).toBeNull();
    const full = { ...empty, data: new Uint8Array(800).fill(1) };
    expect(learnColours(colours, photo.raster, full)).toBe(colours);
  });

  it('take pot and soil for near surroundings wherever they stand', () => {
    // A small canopy in the corner, so that the pot at the right lies far from it.
    const mask = emptyMask(40, 20);
    for (let i = 0; i < 800; i++) mask.data[i] = i % 40 < 4 && i < 160 ? 1 : 0;
    const raster = { ...photo.raster, data: photo.raster.data.slice() };
    for (let i = 0; i < 800; i++) raster.data.set(i % 40 < 30 ? WALL : VIOLET, 3 * i);
    const parts: PartMap = {
      width: 40,
      height: 20,
      data: Uint8Array.from({ length: 800 }, (_, i) => (i % 40 < 30 ? 0 : 3)),
    };
    const most = (one: LearnedColours | null) => Math.min(...(one?.surroundings.filter((x) => x > 0) ?? []));
    expect(most(learnColours(null, raster, mask, { parts }))).toBeGreaterThan(
      1.5 * most(learnColours(null, raster, mask)),
    );
  });
});

describe('more accepted photos', () => {
  it('make the voice louder on a colour that is seldom met', () => {
    const photo = halves(BRONZE, WALL);
    // 2 of 400 canopy pixels.
    for (const at of [45, 130]) photo.raster.data.set(VIOLET, 3 * at);
    const once = voiceOn(VIOLET, learned(photo), photo.raster);
    const often = voiceOn(VIOLET, learned(photo, photo, photo, photo), photo.raster);
    expect(once).toBeGreaterThan(0.1);
    expect(often).toBeGreaterThan(once + 0.3);
  });

  it('fade old ones: four photos later one counts half', () => {
    const [old, fresh] = [halves(BRONZE, WALL), halves(LEAF, WALL)];
    const colours = learned(old, fresh, fresh, fresh, fresh);
    const onlyOld = learned(old).canopy;
    const oldShare = colours.canopy.reduce(
      (sum, share, cell) => sum + ((onlyOld[cell] as number) > 0 ? share : 0),
      0,
    );
    const fade = 0.5 ** (1 / LEARNING.halfLifePhotos);
    expect(oldShare).toBeCloseTo(0.5 / (1 + fade + fade ** 2 + fade ** 3 + 0.5), 4);
  });
});

describe('a bronze plant among green ones', () => {
  let colours: LearnedColours;
  let views: Record<string, AwkwardView>;
  beforeAll(() => {
    colours = learned(...[3, 4].map((week) => awkwardView('bronze', week)));
    views = {
      'the usual light': awkwardView('bronze', 6),
      'half of the light': awkwardView('bronze', 6, { stops: -1 }),
      '1.6 times the light': awkwardView('bronze', 6, { stops: Math.log2(1.6) }),
      'a warm cast': awkwardView('bronze', 6, { warmth: 0.15 }),
    };
  });

  it.each(['the usual light', 'half of the light', '1.6 times the light', 'a warm cast'])(
    'is told by its own colours in %s, where leaf colours in general fail',
    (light) => {
      const { raster, mask } = views[light] as AwkwardView;
      const picture = labOfRaster(raster);
      const own = learnedColourEvidence(picture, colours);
      expect(areaUnderCurve(own, mask)).toBeGreaterThan(0.97);
      expect(overlap(masked(own), mask)).toBeGreaterThan(0.7);
      expect(areaUnderCurve(plantColour(picture), mask)).toBeLessThan(0.8);
    },
  );
});

describe('learned colours in the store', () => {
  const colours = learned(halves(BRONZE, WALL), halves(LEAF, WALL));

  it('come back as they were, to a hundredth of what counts as met', () => {
    const back = decodeColours(encodeColours(colours));
    expect(back?.photos).toBe(2);
    for (const table of ['canopy', 'surroundings'] as const) {
      const off = colours[table].map((share, cell) => Math.abs(share - (back?.[table][cell] as number)));
      expect(Math.max(...off)).toBeLessThan(0.01 * LEARNING.unseenShare);
    }
  });

  it('take less than 64 kB', () => {
    expect(encodeColours(colours).length).toBeLessThan(64 * 1024);
  });

  it('are read from the middle of a larger buffer', () => {
    const bytes = encodeColours(colours);
    const larger = new Uint8Array(bytes.length + 3);
    larger.set(bytes, 3);
    expect(decodeColours(larger.subarray(3))?.photos).toBe(2);
  });

  it('are learned anew when the bytes are of another version or length, or of no photo', () => {
    const bytes = encodeColours(colours);
    const otherVersion = bytes.slice();
    otherVersion[0] = 99;
    expect(decodeColours(otherVersion)).toBeNull();
    expect(decodeColours(bytes.subarray(1))).toBeNull();
    expect(decodeColours(new Uint8Array(0))).toBeNull();
    expect(decodeColours(encodeColours({ ...colours, photos: 0 }))).toBeNull();
  });
});
