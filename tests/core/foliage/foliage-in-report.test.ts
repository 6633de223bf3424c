import { beforeAll, describe, expect, it } from 'vitest';
import { readLeaf } from '../../../core/foliage/read-leaf.ts';
import { measureFound } from '../../../core/measure-photo.ts';
import { type OpenCvDoor, openOpenCv } from '../../../core/opencv/door.ts';
import { IDENTITY } from '../../../core/stand/frame/similarity.ts';
import type { StandReading } from '../../../core/stand/read-stand.ts';
import { foundPlant } from '../drawn-shapes.ts';
import { GREEN, type Painted, paintLeaf, SIDE_PX, YELLOW } from './painted-leaf.ts';

let door: OpenCvDoor;
beforeAll(async () => {
  door = await openOpenCv();
});

const CORNER = paintLeaf((across, down) => (across > 0.75 && down > 0.75 ? YELLOW : GREEN));
const STAND = { frame: { move: IDENTITY }, isElsewhere: false, greys: null } as unknown as StandReading;

function reportOf(painted: Painted, isStandKnown = true) {
  const { raster, parts } = painted;
  const leaf = readLeaf(door, raster, parts, {
    petalsTold: false,
    reference: isStandKnown ? paintLeaf(() => GREEN).raster : null,
    stand: isStandKnown ? STAND : null,
    normal: null,
  });
  const canopy = { ...parts, data: parts.data.map((part) => (part === 0 ? 0 : 1)) };
  const measured = measureFound(foundPlant(canopy), {
    name: 'leaf.jpg',
    widthPx: 2 * SIDE_PX,
    heightPx: 2 * SIDE_PX,
    rasterWidthPx: SIDE_PX,
    rasterHeightPx: SIDE_PX,
    rimMm: null,
    turnDeg: null,
    leaf,
    notes: [],
  });
  return { ...measured, leaf };
}

describe('the leaf in the report of a photo', () => {
  it('speaks in px of the photo as stored upright', () => {
    const { report } = reportOf(CORNER);
    expect(report.foliage?.where[0]?.place).toBe('low on the right');
    // The corner's middle lies at 97.5, 97.5 of the copy.
    expect(Math.abs((report.foliage?.where[0]?.centrePx[0] ?? 0) - 195)).toBeLessThan(4);
    expect(Math.abs((report.foliage?.yellow.share ?? 0) - 1 / 16)).toBeLessThan(0.01);
    expect(report.foliage?.notCompared).toBeNull();
  });

  it('says that yellow flowers may count as yellow leaf where yellow stands high', () => {
    const top = paintLeaf((_, down) => (down < 0.3 ? YELLOW : GREEN));
    expect(reportOf(top).report.notes.join(' ')).toContain('Should it be in yellow bloom');
    expect(reportOf(CORNER).report.notes.join(' ')).not.toContain('yellow bloom');
  });

  it('gives what a normal leaf is learned from', () => {
    expect(reportOf(CORNER).leafLook).toMatchObject({ photos: 1, from: 'backdrop' });
    expect(reportOf(CORNER, false).leafLook).toBeNull();
  });

  it('is told but compared with no other photo when nothing is known of the stand', () => {
    const { foliage } = reportOf(CORNER, false).report;
    expect(foliage?.notCompared).toContain('Set up the stand');
    expect(foliage?.yellow.offBy).toBeGreaterThan(0.04);
  });

  it('is null with the reason in the notes when it cannot be told', () => {
    const { report } = reportOf(paintLeaf(() => YELLOW));
    expect(report.status).toBe('measured');
    expect(report.foliage).toBeNull();
    expect(report.notes.join(' ')).toContain('whether that is the plant’s nature is not known yet');
  });
});
