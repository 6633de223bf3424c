import { describe, expect, it } from 'vitest';
import { refusalWords } from '../../web/src/camera/camera-access.ts';
import { isTurned, windowOfVideo } from '../../web/src/camera/lay-over.ts';
import { movedWords } from '../../web/src/photo/moved-words.ts';

const PHOTO = { widthPx: 4000, heightPx: 3000 };

describe('the lay-over', () => {
  it('fills a live picture of the photo’s own shape', () => {
    expect(windowOfVideo(PHOTO, { width: 1600, height: 1200 })).toEqual({
      x: 0,
      y: 0,
      width: 4000,
      height: 3000,
    });
  });

  it('is cut at top and foot alike by a flatter one, with the widths agreeing', () => {
    expect(windowOfVideo(PHOTO, { width: 1920, height: 1080 })).toEqual({
      x: 0,
      y: 375,
      width: 4000,
      height: 2250,
    });
  });

  it('leaves room at top and foot in a taller one', () => {
    expect(windowOfVideo(PHOTO, { width: 1000, height: 1000 })).toEqual({
      x: 0,
      y: -500,
      width: 4000,
      height: 4000,
    });
  });

  it('notices a phone held the other way up', () => {
    expect(isTurned(PHOTO, { width: 1080, height: 1920 })).toBe(true);
    expect(isTurned(PHOTO, { width: 1920, height: 1080 })).toBe(false);
  });
});

describe('a camera that is not lent', () => {
  it('says for each reason what to do', () => {
    const words = ['NotAllowedError', 'NotFoundError', 'NotReadableError', 'AbortError'].map((name) =>
      refusalWords(new DOMException('', name)),
    );
    expect(new Set(words).size).toBe(4);
    expect(words[0]).toContain('Allow it in the browser’s settings');
    expect(words[2]).toContain('Close it');
    for (const said of words) expect(said).toMatch(/photo/);
  });
});

describe('a moved frame in figures', () => {
  const frame = {
    from: 'marks',
    shiftPx: [62, -8],
    shiftMm: [21.2, -2.8],
    turnDeg: -0.6,
    zoom: 0.985,
    standing: 'moved',
    words: '',
  } as const;

  it('gives side, height, turn and size, in mm where the scale is known', () => {
    expect(movedWords(frame)).toBe(
      'In this photo the stand lies 21.2 mm to the right, 2.8 mm up, turned 0.6° anticlockwise, 1.5 % smaller.',
    );
    expect(movedWords({ ...frame, shiftMm: null, shiftPx: [-4, 3], turnDeg: 1, zoom: 1.02 })).toBe(
      'In this photo the stand lies 4.0 px to the left, 3.0 px down, turned 1.0° clockwise, 2.0 % larger.',
    );
  });
});
