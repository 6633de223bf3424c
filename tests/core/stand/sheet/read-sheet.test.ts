import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenCvDoor, openOpenCv } from '../../../../core/opencv/door.ts';
import { readSheet } from '../../../../core/stand/sheet/read-sheet.ts';
import { mmPerPxAtPlant, type PlantBeforeSheet } from '../../../../core/stand/sheet/scale-from-sheet.ts';
import type { SheetReading } from '../../../../core/stand/sheet/sheet-reading.ts';
import { mapped, photographSheet, SCENE, type SheetPhoto, type SheetScene } from './photographed-sheet.ts';

let door: OpenCvDoor;
beforeAll(async () => {
  door = await openOpenCv();
});

const SMALL = { widthPx: 1000, heightPx: 750, noiseSteps: 2 };

function readingOf(
  changes: Partial<SheetScene>,
  focalLengthPx: number | null = SCENE.focalPx,
): { photo: SheetPhoto; reading: SheetReading } {
  const photo = photographSheet({ ...SMALL, ...changes });
  const reading = readSheet(door, photo.raster, changes.paper ?? 'A4', { focalLengthPx, place: 'backdrop' });
  if (!reading.ok) throw new Error(reading.hint);
  return { photo, reading };
}

/** Largest distance of the paper's corners as read from where they are, px. */
function cornerMiss({ photo, reading }: ReturnType<typeof readingOf>): number {
  const { widthMm, heightMm } = photo.geometry;
  const corners = [
    [0, 0],
    [widthMm, 0],
    [0, heightMm],
    [widthMm, heightMm],
  ] as const;
  return Math.max(
    ...corners.map((corner) => {
      const [x, y] = mapped(photo.paperToPhoto, corner);
      const [u, v] = mapped(reading.paperToPhoto, corner);
      return Math.hypot(u - x, v - y);
    }),
  );
}

const PLANT: PlantBeforeSheet = {
  paper: 'A4',
  place: 'backdrop',
  plantInFrontMm: 150,
  plantPx: null,
  aboveBenchMm: 0,
  cameraDistanceMm: null,
};

describe('the stand sheet in a photo', () => {
  it.each([800, 1500, 3000])(
    'from %i mm gives the scale of a plant 150 mm before it, to 1 percent',
    (distanceMm) => {
      const { photo, reading } = readingOf({ distanceMm });
      expect(Math.abs(reading.mmPerPxAtSheet / photo.mmPerPx - 1)).toBeLessThan(0.01);
      const scale = mmPerPxAtPlant(reading, PLANT);
      if (scale.mmPerPx === null) throw new Error(scale.reason);
      const truth = (distanceMm - 150) / SCENE.focalPx;
      expect(Math.abs(scale.mmPerPx / truth - 1)).toBeLessThan(0.01);
      expect(Math.abs(scale.mmPerPx - truth)).toBeLessThan(3 * scale.doubt);
      // Without the perspective it would read 5 to 23 % small.
      expect(reading.mmPerPxAtSheet / truth - 1).toBeGreaterThan(0.05);
    },
  );

  it('gives place, tilt, distance and arrow of a tilted and turned sheet', () => {
    const scene = {
      distanceMm: 1000,
      tiltDeg: 35,
      tiltAboutDeg: 70,
      turnDeg: 90,
      asideMm: [60, -40] as const,
    };
    const read = readingOf(scene);
    expect(cornerMiss(read)).toBeLessThan(0.3);
    const { pose, residualPx, arrowTurnDeg, lightSide } = read.reading;
    expect(Math.abs((pose?.distanceMm ?? 0) / 1000 - 1)).toBeLessThan(0.01);
    expect(Math.abs((pose?.tiltDeg ?? 0) - 35)).toBeLessThan(1);
    expect(residualPx).toBeLessThan(0.1);
    expect(Math.abs(arrowTurnDeg - 90)).toBeLessThan(20);
    expect(lightSide).toBe('right');
  });

  it('reads the focal length off strong perspective, and says null where it is too weak', () => {
    const strong = readingOf({ distanceMm: 800, tiltDeg: 35, tiltAboutDeg: 20 }, null).reading;
    expect(strong.pose?.focalLengthFrom).toBe('perspective');
    expect(Math.abs((strong.pose?.focalLengthPx ?? 0) / SCENE.focalPx - 1)).toBeLessThan(0.06);
    const flat = readingOf({ distanceMm: 2500 }, null);
    expect(flat.reading.pose).toBeNull();
    expect(flat.reading.notes.join(' ')).toContain('How far the camera stands from the sheet cannot be told');
    expect(Math.abs(flat.reading.mmPerPxAtSheet / flat.photo.mmPerPx - 1)).toBeLessThan(0.01);
  });

  it('gives the scale within 1 % also when the camera’s word on its focal length is 5 % off', () => {
    const scene = { distanceMm: 1500, tiltDeg: 20, tiltAboutDeg: 90 };
    const { photo, reading } = readingOf(scene, 1.05 * SCENE.focalPx);
    expect(Math.abs(reading.mmPerPxAtSheet / photo.mmPerPx - 1)).toBeLessThan(0.01);
    const distance = reading.pose?.distanceMm ?? 0;
    expect(Math.abs(distance - 1500)).toBeLessThan(3 * (reading.pose?.distanceDoubtMm ?? 0));
  });

  it('does with four marks what it does with five', () => {
    const read = readingOf({ tiltDeg: 20, tiltAboutDeg: 45, leaves: [{ centreMm: [40, 40], radiusMm: 40 }] });
    expect(read.reading.marks.map(({ id }) => id)).not.toContain('top-left');
    expect(read.reading.fit).toBe('perspective');
    expect(cornerMiss(read)).toBeLessThan(1);
    expect(Math.abs(read.reading.mmPerPxAtSheet / read.photo.mmPerPx - 1)).toBeLessThan(0.01);
  });

  it('says what three and two marks cost', () => {
    const three = readingOf({
      turnDeg: 180,
      leaves: [
        { centreMm: [178, 32], radiusMm: 30 },
        { centreMm: [158, 128], radiusMm: 30 },
      ],
    });
    expect(three.reading.fit).toBe('affine');
    expect(three.reading.notes[0]).toContain(
      '3 of the stand sheet’s 5 rings were seen: the scale is good to about 2 %',
    );
    expect(Math.abs(three.reading.mmPerPxAtSheet / three.photo.mmPerPx - 1)).toBeLessThan(0.02);
    expect(Math.abs(Math.abs(three.reading.arrowTurnDeg) - 180)).toBeLessThan(2);

    const two = readingOf({ leaves: [{ centreMm: [120, 230], radiusMm: 135 }] });
    expect(two.reading.fit).toBe('similarity');
    expect(two.reading.marks.map(({ id }) => id).sort()).toEqual(['top-left', 'top-right']);
    expect(two.reading.mmPerPxDoubt / two.reading.mmPerPxAtSheet).toBeGreaterThanOrEqual(0.03);
    expect(Math.abs(two.reading.mmPerPxAtSheet / two.photo.mmPerPx - 1)).toBeLessThan(0.03);
  });

  it('tells the light’s colour by the greys, also with a leaf over one of them', () => {
    const cast = [1.1, 1, 0.7] as const;
    const { reading } = readingOf({ cast, leaves: [{ centreMm: [20, 183], radiusMm: 22 }] });
    expect(reading.greys.state).toBe('ok');
    const [red = 0, green = 0, blue = 0] = reading.greys.gains ?? [];
    expect(green).toBe(1);
    expect(Math.abs(red * 1.1 - 1)).toBeLessThan(0.04);
    expect(Math.abs(blue * 0.7 - 1)).toBeLessThan(0.04);
  });

  it('tells no colour from greys that are burnt out, in the dark or covered', () => {
    expect(readingOf({ paperLight: 6 }).reading.greys).toEqual({
      state: 'too-bright',
      gains: null,
      spread: null,
    });
    expect(readingOf({ paperLight: 0.006, noiseSteps: 0 }).reading.greys.state).toBe('too-dark');
    const covered = readingOf({ leaves: [{ centreMm: [60, 195], radiusMm: 65 }] }).reading;
    expect(covered.greys.state).toBe('not-seen');
    expect(covered.notes.join(' ')).toContain('Too few grey patches are in sight');
  });

  it('says what to do when the sheet is not there or is the other paper', () => {
    const bare = photographSheet({ ...SMALL, leaves: [{ centreMm: [105, 150], radiusMm: 230 }] });
    const known = { focalLengthPx: null, place: 'backdrop' } as const;
    const none = readSheet(door, bare.raster, 'A4', known);
    expect(none).toMatchObject({
      ok: false,
      reason: 'no-marks',
      hint: expect.stringContaining('Bring the sheet into the picture'),
    });
    const letter = photographSheet({ ...SMALL, paper: 'Letter' });
    const other = readSheet(door, letter.raster, 'A4', known);
    expect(other).toMatchObject({
      ok: false,
      reason: 'other-paper',
      hint: expect.stringContaining('A4 or Letter'),
    });
  });
});
