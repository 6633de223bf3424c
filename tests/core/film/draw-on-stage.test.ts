import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { drawOnStage } from '../../../core/film/draw-on-stage.ts';
import { writeDay } from '../../../core/film/write-day.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import { similarityAbout } from '../../../core/stand/frame/similarity.ts';

const STILL = { a: 1, b: 0, shiftX: 0, shiftY: 0 };

function picture(width: number, height: number, red: (x: number, y: number) => number): Raster {
  const data = new Uint8Array(3 * width * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) data[3 * (y * width + x)] = red(x, y);
  return { width, height, data };
}

const blank = (width: number, height: number) => picture(width, height, () => 0);
const redAt = ({ width, data }: Raster, x: number, y: number) => data[3 * (y * width + x)];

describe('a photo drawn on the stage', () => {
  it('is itself where nothing moved', () => {
    const photo = picture(8, 6, (x, y) => 10 * x + y);
    const into = blank(8, 6);
    drawOnStage(photo, { widthPx: 8, heightPx: 6 }, STILL, { x: 0, y: 0, width: 8, height: 6 }, into);
    expect([...into.data]).toEqual([...photo.data]);
  });

  it('is brought back by whole px, and what it does not reach is dark', () => {
    const photo = picture(8, 6, (x) => 20 * x);
    const into = blank(8, 6);
    drawOnStage(
      photo,
      { widthPx: 8, heightPx: 6 },
      { ...STILL, shiftX: 2 },
      { x: 0, y: 0, width: 8, height: 6 },
      into,
    );
    expect(redAt(into, 5, 3)).toBe(60);
    expect(redAt(into, 0, 3)).toBe(34);
  });

  it('puts a spot where the frame says that it stood, from a copy of half the size', () => {
    const size = { widthPx: 400, heightPx: 300 };
    const frame = { shiftPx: [24, -10] as const, turnDeg: 3, zoom: 1.1 };
    const toPhoto = similarityAbout([200, 150], frame);
    // The spot at (150, 100) of the stage, drawn into the photo by the frame's own definition.
    const spot = [
      toPhoto.a * 150 - toPhoto.b * 100 + toPhoto.shiftX,
      toPhoto.b * 150 + toPhoto.a * 100 + toPhoto.shiftY,
    ] as const;
    const photo = picture(200, 150, (x, y) =>
      Math.round(255 * Math.exp(-((2 * x + 1 - spot[0]) ** 2 + (2 * y + 1 - spot[1]) ** 2) / 200)),
    );
    const square = toPhoto.a ** 2 + toPhoto.b ** 2;
    const back = {
      a: toPhoto.a / square,
      b: -toPhoto.b / square,
      shiftX: -(toPhoto.a * toPhoto.shiftX + toPhoto.b * toPhoto.shiftY) / square,
      shiftY: (toPhoto.b * toPhoto.shiftX - toPhoto.a * toPhoto.shiftY) / square,
    };
    const into = blank(200, 150);
    drawOnStage(photo, size, back, { x: 0, y: 0, width: 400, height: 300 }, into);
    let [sum, sumX, sumY] = [0, 0, 0];
    for (let y = 20; y < 130; y++)
      for (let x = 20; x < 180; x++) {
        // What the photo does not reach is a little bright as well.
        const red = Math.max(0, (redAt(into, x, y) as number) - 34);
        sum += red;
        sumX += red * (2 * x + 1);
        sumY += red * (2 * y + 1);
      }
    expect(sumX / sum).toBeCloseTo(150, 0);
    expect(sumY / sum).toBeCloseTo(100, 0);
  });
});

describe('the day in a picture', () => {
  it('reads as digits, light on dark', () => {
    const into = picture(220, 60, () => 128);
    writeDay(into, day('2026-10-18'));
    const rows = Array.from({ length: 7 }, (_, y) =>
      Array.from({ length: 59 }, (_, x) => (redAt(into, 6 + x, 47 + y) === 255 ? '#' : '.')).join(''),
    );
    expect(rows.map((row) => row.slice(0, 11))).toEqual([
      '.###...###.',
      '#...#.#...#',
      '....#.#..##',
      '...#..#.#.#',
      '..#...##..#',
      '.#....#...#',
      '#####..###.',
    ]);
  });
});
