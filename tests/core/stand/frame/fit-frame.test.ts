import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenCvDoor, openOpenCv } from '../../../../core/opencv/door.ts';
import type { Mask, PointPx, Raster } from '../../../../core/raster/raster.ts';
import { fitFrame } from '../../../../core/stand/frame/fit-frame.ts';
import { photoAgainstStand } from '../../../../core/stand/frame/photo-against-stand.ts';
import {
  inverseOf,
  moved,
  type Similarity,
  similarityAbout,
} from '../../../../core/stand/frame/similarity.ts';
import { seededChance, smoothNoise } from '../../../../sample-images/render/geometry/seeded-random.ts';

const [WIDTH, HEIGHT] = [800, 600];
const LEAF = [60, 110, 50];
const MIDDLE: PointPx = [WIDTH / 2, HEIGHT / 2];

interface Painted {
  /** Photo px to the stand's own px. */
  readonly toStand?: Similarity;
  /** Height of folds and stains, levels of 255. */
  readonly relief?: number;
  readonly cloth?: number;
  readonly plantRadius?: number;
  readonly light?: number;
  readonly noiseSeed: number;
}

/** A cloth with soft folds and stains behind a green ball, with noise of 1.5 levels. */
function painted({
  toStand,
  relief = 14,
  cloth = 3,
  plantRadius = 0,
  light = 1,
  noiseSeed,
}: Painted): Raster {
  const chance = seededChance(noiseSeed);
  const data = new Uint8Array(3 * WIDTH * HEIGHT);
  for (let y = 0, at = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++, at += 3) {
      const [u, v] = toStand === undefined ? [x, y] : moved(toStand, [x + 0.5, y + 0.5]);
      const folds =
        relief * (smoothNoise(u / 45, v / 70, cloth) + 0.6 * smoothNoise(u / 17, v / 19, cloth + 1));
      const isLeaf = Math.hypot(u - 400, v - 280) < plantRadius;
      const leaf = 25 * smoothNoise(u / 6, v / 6, noiseSeed);
      for (let channel = 0; channel < 3; channel++) {
        const level = isLeaf ? (LEAF[channel] as number) + leaf : 150 + folds;
        data[at + channel] = Math.max(
          0,
          Math.min(255, Math.round(light * level + 1.5 * chance.normal(at + channel))),
        );
      }
    }
  }
  return { width: WIDTH, height: HEIGHT, data };
}

const discMask = (radius: number): Mask => ({
  width: WIDTH,
  height: HEIGHT,
  data: Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) =>
    Math.hypot((i % WIDTH) - 400, Math.floor(i / WIDTH) - 280) < radius ? 1 : 0,
  ),
});

const CLUES = { referenceMarks: [], photoMarks: [], photoPlant: null, referencePlant: null };

/** Farthest miss at the picture's corners, px. */
function worstMissPx(found: Similarity, truth: Similarity): number {
  const corners: PointPx[] = [
    [0, 0],
    [WIDTH, 0],
    [0, HEIGHT],
    [WIDTH, HEIGHT],
  ];
  return Math.max(
    ...corners.map((corner) => {
      const [[x, y], [u, v]] = [moved(found, corner), moved(truth, corner)];
      return Math.hypot(x - u, y - v);
    }),
  );
}

describe('a frame by what is seen of the stand', () => {
  let door: OpenCvDoor;
  beforeAll(async () => {
    door = await openOpenCv();
  });

  it.each([
    [[12, -7], 0, 1],
    [[-18, 9], 3, 1.05],
    [[5, 14], -3, 0.95],
  ] as const)(
    'is found for a shift of %j px, a turn of %d° and a zoom of %d though the plant grew',
    (shiftPx, turnDeg, zoom) => {
      const toStand = inverseOf(similarityAbout(MIDDLE, { shiftPx, turnDeg, zoom }));
      const reference = painted({ plantRadius: 90, noiseSeed: 1 });
      const photo = painted({ toStand, plantRadius: 140, light: 0.9, noiseSeed: 2 });
      const fitted = fitFrame(door, photo, { ...CLUES, reference, photoPlant: discMask(170) });
      if (!fitted.ok) throw new Error(fitted.reason);
      // Half a px of 800 is one of 1600.
      expect(worstMissPx(fitted.move, toStand)).toBeLessThan(1);
      expect(fitted.fit.standing).toBe('moved');
      expect(fitted.fit.turnDeg).toBeCloseTo(turnDeg, 1);
      expect(fitted.fit.zoom).toBeCloseTo(zoom, 2);
      expect(Math.hypot(fitted.fit.shiftPx[0] - shiftPx[0], fitted.fit.shiftPx[1] - shiftPx[1])).toBeLessThan(
        1,
      );
    },
  );

  it.each([
    [[70, 0], 0, 1],
    [[0, 0], 8, 1],
    [[0, 0], 0, 1.12],
  ] as const)('is far after a shift of %j px, a turn of %d°, a zoom of %d', (shiftPx, turnDeg, zoom) => {
    const toStand = inverseOf(similarityAbout(MIDDLE, { shiftPx, turnDeg, zoom }));
    const fitted = fitFrame(door, painted({ toStand, noiseSeed: 4 }), {
      ...CLUES,
      reference: painted({ noiseSeed: 3 }),
    });
    expect(fitted.ok && fitted.fit.standing).toBe('far');
  });

  it('is not guessed on a plain cloth, where noise is all there is', () => {
    const fitted = fitFrame(door, painted({ relief: 0, plantRadius: 120, noiseSeed: 6 }), {
      ...CLUES,
      reference: painted({ relief: 0, noiseSeed: 5 }),
      photoPlant: discMask(150),
    });
    expect(fitted.ok ? 'guessed' : fitted.reason).toMatch(/recognised\. Put up the printed stand sheet/);
  });

  it('is not given for another stand, and the words say what to do', () => {
    const fitted = fitFrame(door, painted({ cloth: 30, noiseSeed: 8 }), {
      ...CLUES,
      reference: painted({ noiseSeed: 7 }),
    });
    expect(fitted.ok ? 'guessed' : fitted.reason).toMatch(
      /^This photo does not show the stand as it was set up.*choose the right stand/,
    );
  });

  it('is not tried on a picture of another size', () => {
    const reference = { width: 60, height: 80, data: new Uint8Array(3 * 60 * 80) };
    const fitted = fitFrame(door, painted({ noiseSeed: 1 }), { ...CLUES, reference });
    expect(fitted.ok ? '' : fitted.reason).toMatch(/60 × 80 px and this photo 800 × 600 px/);
  });

  it('goes by the ring marks when two are seen in both pictures, whatever else is seen', () => {
    const marks = (x: number) =>
      ['a', 'b'].map((id, k) => ({ id, centrePx: [x + 300 * k, 100 + 200 * k] as const, doubtPx: 0.1 }));
    const fitted = fitFrame(door, painted({ noiseSeed: 1 }), {
      ...CLUES,
      reference: painted({ cloth: 90, noiseSeed: 2 }),
      photoMarks: marks(112),
      referenceMarks: marks(100),
    });
    expect(fitted.ok && fitted.fit.from).toBe('marks');
    expect(fitted.ok && fitted.fit.shiftPx[0]).toBeCloseTo(12, 6);
  });
});

describe('a photo beside the stand’s first picture', () => {
  let door: OpenCvDoor;
  beforeAll(async () => {
    door = await openOpenCv();
  });
  const reference = painted({ noiseSeed: 1 });

  it('has nothing to be told when light and sharpness are as they were', () => {
    const { stops, notes } = photoAgainstStand(door, painted({ light: 0.85, noiseSeed: 2 }), reference, null);
    expect(Math.abs(stops ?? 9)).toBeLessThan(0.8);
    expect(notes).toEqual([]);
  });

  it('is told to be too dark, whatever the plant', () => {
    const dark = painted({ light: 0.45, plantRadius: 150, noiseSeed: 2 });
    const { stops, notes } = photoAgainstStand(door, dark, reference, discMask(170));
    // 150 × 0.45 against 150 in sRGB is 0.0565 against 0.305 in linear light: 2.4 stops.
    expect(stops).toBeCloseTo(-2.4, 1);
    expect(notes.join()).toMatch(/darker than in its first picture: photograph at the same hour/);
  });

  it('is told to be less sharp where the stand has clear edges', () => {
    // A board of squares; the photo's edges run over 14 px instead of 2.
    const board = (softPx: number): Raster => {
      const data = new Uint8Array(3 * WIDTH * HEIGHT);
      for (let i = 0; i < WIDTH * HEIGHT; i++) {
        const along = (value: number) =>
          Math.max(-1, Math.min(1, (Math.abs((value % 80) - 40) - 20) / softPx));
        const level = 130 + 70 * along(i % WIDTH) * along(Math.floor(i / WIDTH));
        data.fill(Math.round(level), 3 * i, 3 * i + 3);
      }
      return { width: WIDTH, height: HEIGHT, data };
    };
    const { softer, notes } = photoAgainstStand(door, board(7), board(1), null);
    expect(softer).toBeGreaterThan(1.7);
    expect(notes.join()).toMatch(/less sharp than the stand’s first picture: wipe the lens/);
    expect(photoAgainstStand(door, board(1), board(1), null).notes).toEqual([]);
  });
});
