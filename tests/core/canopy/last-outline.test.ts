import { beforeAll, describe, expect, it } from 'vitest';
import { type Evidence, joinEvidence } from '../../../core/canopy/evidence.ts';
import { LAST_OUTLINE, lastOutlineEvidence } from '../../../core/canopy/last-outline.ts';
import type { RimEnds } from '../../../core/canopy/lay-over.ts';
import { learnColours, learnedColourEvidence } from '../../../core/canopy/learned-colours.ts';
import { type OpenCvDoor, openOpenCv } from '../../../core/opencv/door.ts';
import { labOfRaster } from '../../../core/raster/lab.ts';
import { emptyMask, type Mask, type PointPx } from '../../../core/raster/raster.ts';
import { type AwkwardView, awkwardView } from './awkward-series.ts';
import { masked } from './evidence-scores.ts';
import { overlap } from './painted-plant.ts';

let door: OpenCvDoor;
beforeAll(async () => {
  door = await openOpenCv();
});

const SIZE = { width: 200, height: 160 };

function disc(middle: PointPx, radius: number, size = SIZE): Mask {
  const mask = emptyMask(size.width, size.height);
  for (let i = 0; i < mask.data.length; i++) {
    const [x, y] = [(i % size.width) + 0.5, Math.floor(i / size.width) + 0.5];
    mask.data[i] = Math.hypot(x - middle[0], y - middle[1]) < radius ? 1 : 0;
  }
  return mask;
}

function potAt(x: number, y: number, half: number): RimEnds {
  return { rimLeftPx: [x - half, y], rimRightPx: [x + half, y] };
}

function oddsAt({ width, logOdds }: Evidence, x: number, y: number): number {
  return logOdds[y * width + x] as number;
}

describe('the last outline', () => {
  const ball = disc([100, 80], 40);

  it('speaks for its middle and against what is far outside, softly', () => {
    const evidence = lastOutlineEvidence(door, { canopy: ball, pot: null, days: 7 }, SIZE, null);
    expect(oddsAt(evidence, 100, 80)).toBeGreaterThan(0.7);
    expect(oddsAt(evidence, 10, 80)).toBeLessThan(-1);
    expect(Math.max(...evidence.logOdds)).toBeLessThanOrEqual(LAST_OUTLINE.mostInside);
    expect(Math.min(...evidence.logOdds)).toBeGreaterThanOrEqual(-LAST_OUTLINE.mostOutside);
  });

  it('leaves room to grow: just outside it is less against than just inside for', () => {
    const evidence = lastOutlineEvidence(door, { canopy: ball, pot: null, days: 14 }, SIZE, null);
    const [inside, outside] = [oddsAt(evidence, 100 + 35, 80), oddsAt(evidence, 100 + 45, 80)];
    expect(inside).toBeGreaterThan(0.5);
    expect(outside).toBeGreaterThan(-inside);
  });

  it('says less the longer ago it was', () => {
    const loudness = [0, 7, 28, 90].map((days) => {
      const { logOdds } = lastOutlineEvidence(door, { canopy: ball, pot: null, days }, SIZE, null);
      return logOdds.reduce((sum, odds) => sum + Math.abs(odds), 0) / logOdds.length;
    });
    expect(loudness).toEqual([...loudness].sort((one, other) => other - one));
    expect(loudness[3]).toBeLessThan(0.15 * (loudness[0] as number));
  });

  it('does not speak up for a narrow stem, which may have been cut off', () => {
    const withStem = { ...ball, data: ball.data.slice() };
    for (let y = 5; y < 45; y++) for (let x = 98; x < 102; x++) withStem.data[y * SIZE.width + x] = 1;
    const evidence = lastOutlineEvidence(door, { canopy: withStem, pot: null, days: 7 }, SIZE, null);
    expect(oddsAt(evidence, 100, 20)).toBeLessThan(0.45);
    expect(oddsAt(evidence, 100, 20)).toBeGreaterThan(oddsAt(evidence, 60, 20));
  });

  it('is laid over by the rims: shifted and scaled', () => {
    const last = { canopy: ball, pot: potAt(100, 115, 20), days: 7 };
    const evidence = lastOutlineEvidence(door, last, SIZE, potAt(120, 120, 22));
    // The ball's middle stood 35 px above the rim, its radius was 40: now 38.5 and 44 about (120, 81.5).
    const wanted = lastOutlineEvidence(
      door,
      { canopy: disc([120, 81.5], 44), pot: null, days: 7 },
      SIZE,
      null,
    );
    // A column at the left now shows what the photo of then did not reach.
    expect(overlap(masked(evidence), masked(wanted))).toBeGreaterThan(0.96);
    expect(oddsAt(evidence, 2, 80)).toBe(0);
  });

  it('stays as it stands when a rim is not known or cannot be right', () => {
    const asItStands = lastOutlineEvidence(door, { canopy: ball, pot: null, days: 7 }, SIZE, null);
    const pot = potAt(100, 115, 20);
    const noneNow = lastOutlineEvidence(door, { canopy: ball, pot, days: 7 }, SIZE, null);
    const misread = lastOutlineEvidence(door, { canopy: ball, pot, days: 7 }, SIZE, potAt(60, 150, 60));
    const noWidth = lastOutlineEvidence(door, { canopy: ball, pot, days: 7 }, SIZE, potAt(60, 150, 0));
    for (const other of [noneNow, misread, noWidth]) expect(other.logOdds).toEqual(asItStands.logOdds);
  });

  it('is taken from a raster of another size', () => {
    const larger = disc([300, 240], 120, { width: 600, height: 480 });
    const evidence = lastOutlineEvidence(door, { canopy: larger, pot: null, days: 7 }, SIZE, null);
    const wanted = lastOutlineEvidence(door, { canopy: ball, pot: null, days: 7 }, SIZE, null);
    expect(overlap(masked(evidence), masked(wanted))).toBeGreaterThan(0.97);
  });

  it('says nothing when the photo of then had another shape and no rims tell how the two lie', () => {
    const upright = disc([80, 100], 40, { width: 160, height: 200 });
    const evidence = lastOutlineEvidence(door, { canopy: upright, pot: null, days: 7 }, SIZE, null);
    expect(evidence.logOdds.every((odds) => odds === 0)).toBe(true);
  });

  it('says nothing when it is empty', () => {
    const last = { canopy: emptyMask(200, 160), pot: null, days: 7 };
    expect(lastOutlineEvidence(door, last, SIZE, null).logOdds.every((odds) => odds === 0)).toBe(true);
  });

  it('refuses days before its own', () => {
    const last = { canopy: ball, pot: null, days: -1 };
    expect(() => lastOutlineEvidence(door, last, SIZE, null)).toThrow(
      'Expected at least 0 for last.days but received -1',
    );
  });
});

describe('a plant cut back hard since the last photo', () => {
  let before: AwkwardView;
  let now: AwkwardView;
  beforeAll(() => {
    before = awkwardView('bronze', 6);
    now = awkwardView('bronze', 6, { cutBackMm: 70 });
  });

  it('is found as cut: where all around is seen to be no canopy, the last outline is silent', () => {
    const colours = learnColours(null, before.raster, before.mask);
    if (colours === null) throw new Error('Expected colours');
    const seen = learnedColourEvidence(labOfRaster(now.raster), colours);
    const last = { canopy: before.mask, pot: null, days: 7 };
    const deaf = lastOutlineEvidence(door, last, now.raster, null);
    const joined = joinEvidence(seen, lastOutlineEvidence(door, last, now.raster, null, seen));
    const removed = now.mask.data.map((inside, i) => (before.mask.data[i] as number) & (1 - inside));
    const shareKept = (evidence: Evidence) => {
      const found = masked(evidence).data;
      const kept = removed.reduce((sum, was, i) => sum + (was & (found[i] as number)), 0);
      return kept / removed.reduce((sum, was) => sum + was, 0);
    };
    expect(overlap(now.mask, before.mask)).toBeLessThan(0.5);
    expect(shareKept(deaf)).toBeGreaterThan(0.9);
    // The colours alone keep an eighth of what was cut off, where it bared other plants and a pot behind.
    expect(shareKept(joined)).toBeLessThan(shareKept(seen) + 0.12);
    expect(overlap(masked(joined), now.mask)).toBeGreaterThan(overlap(masked(seen), now.mask) + 0.05);
  });
});
