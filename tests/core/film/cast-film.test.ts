import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { castFilm, filmPlaces, filmSides } from '../../../core/film/cast-film.ts';
import { type FilmPhoto, sideOf } from '../../../core/film/film-photo.ts';
import type { PointPx } from '../../../core/raster/raster.ts';
import type { Frame } from '../../../core/report.ts';
import { moved, similarityAbout } from '../../../core/stand/frame/similarity.ts';

const SIZE = { widthPx: 1200, heightPx: 1600 };
const STILL: Frame = {
  from: 'marks',
  shiftPx: [0, 0],
  shiftMm: null,
  turnDeg: 0,
  zoom: 1,
  standing: 'same',
  words: '',
};

function rimAt(xPx: number, yPx: number, widthPx: number) {
  return {
    xPx,
    rimLeftPx: [xPx - widthPx / 2, yPx] as PointPx,
    rimRightPx: [xPx + widthPx / 2, yPx] as PointPx,
    rimEllipse: null,
  };
}

function photo(on: string, change: Partial<FilmPhoto> = {}): FilmPhoto {
  return {
    id: on,
    day: day(on),
    turnDeg: 0,
    place: null,
    ...SIZE,
    report: { frame: null, notCompared: null, axis: rimAt(600, 1300, 300), scale: null, ball: null },
    outlinePx: [
      [400, 700],
      [800, 700],
      [600, 1300],
    ],
    leftOut: null,
    ...change,
  };
}

/** Taken on a stand, with the frame that its report tells. */
function onStand(on: string, frame: Partial<Frame> | null, change: Partial<FilmPhoto> = {}): FilmPhoto {
  const plain = photo(on);
  return {
    ...plain,
    place: 'window/1',
    report: { ...plain.report, frame: frame && { ...STILL, ...frame } } as FilmPhoto['report'],
    ...change,
  };
}

describe('a film of one plant', () => {
  it('runs from the oldest day to the newest, whatever order the photos come in', () => {
    const film = castFilm([photo('2026-03-15'), photo('2026-03-01'), photo('2026-03-08')]);
    expect(film?.frames.map(({ photo: { day } }) => day)).toEqual(['2026-03-01', '2026-03-08', '2026-03-15']);
    expect(film?.absent).toEqual([]);
  });

  it('brings what stands still back to one place, by the frame of each photo', () => {
    const frame = { shiftPx: [40, -25] as PointPx, turnDeg: 2, zoom: 1.05 };
    const film = castFilm([
      onStand('2026-03-01', {}),
      onStand('2026-03-08', { ...frame, standing: 'moved' }),
    ]);
    const sheetCorner: PointPx = [180, 220];
    // Where that corner lies in the photo, as the report's definition has it: about the picture's middle.
    const inPhoto = moved(similarityAbout([SIZE.widthPx / 2, SIZE.heightPx / 2], frame), sheetCorner);
    const [x, y] = moved(film?.frames[1]?.toStage as never, inPhoto);
    expect(x).toBeCloseTo(180, 9);
    expect(y).toBeCloseTo(220, 9);
  });

  it('leaves a photo alone whose rim was merely read a little otherwise', () => {
    const jitter = { axis: rimAt(603, 1304, 309), frame: null, notCompared: null, scale: null, ball: null };
    const film = castFilm([
      photo('2026-03-01'),
      photo('2026-03-08'),
      photo('2026-03-15', { report: jitter }),
    ]);
    expect(film?.frames[2]?.toStage).toEqual({ a: 1, b: 0, shiftX: 0, shiftY: 0 });
  });

  it('brings a photo from a camera that stood nearer to the same rim', () => {
    const near = { axis: rimAt(500, 1400, 450), frame: null, notCompared: null, scale: null, ball: null };
    const film = castFilm([photo('2026-03-01'), photo('2026-03-08'), photo('2026-03-15', { report: near })]);
    const move = film?.frames[2]?.toStage as never;
    expect(moved(move, near.axis.rimLeftPx)).toEqual([450, 1300]);
    expect(moved(move, near.axis.rimRightPx)).toEqual([750, 1300]);
  });

  it('leaves a photo as it was taken whose rim leaves hide, where the others lie still', () => {
    const hidden = { axis: null, frame: null, notCompared: null, scale: null, ball: null };
    const film = castFilm([
      photo('2026-03-01'),
      photo('2026-03-08'),
      photo('2026-03-15', { report: hidden }),
    ]);
    expect(film?.frames[2]?.toStage).toEqual({ a: 1, b: 0, shiftX: 0, shiftY: 0 });
    const roving = [rimAt(300, 900, 200), rimAt(600, 1300, 300), rimAt(800, 1500, 500)].map((axis, week) =>
      photo(`2026-03-0${week + 1}`, { report: { ...hidden, axis } }),
    );
    const unheld = castFilm([...roving, photo('2026-03-15', { report: hidden })]);
    expect(unheld?.absent.map(({ absence }) => absence)).toEqual(['nothing-to-hold']);
  });

  it('says why each photo that does not fit stays out', () => {
    const film = castFilm([
      onStand('2026-03-01', {}),
      onStand('2026-03-02', {}),
      onStand('2026-03-03', { standing: 'far' }),
      onStand('2026-03-04', null, {
        report: { frame: null, notCompared: 'Another place.', axis: null, scale: null, ball: null },
      }),
      onStand('2026-03-05', {}, { leftOut: 'limp from drought' }),
      onStand('2026-03-06', {}, { report: null }),
      onStand('2026-03-07', {}, { widthPx: 800 }),
      onStand('2026-03-08', {}, { place: 'window/2' }),
      onStand('2026-03-02', {}, { id: 'again' }),
    ]);
    expect(film?.frames.map(({ photo: { id } }) => id)).toEqual(['2026-03-01', '2026-03-02']);
    expect(film?.absent.map(({ photo: { id }, absence }) => [id, absence])).toEqual([
      ['again', 'same-day'],
      ['2026-03-03', 'camera-moved'],
      ['2026-03-04', 'camera-moved'],
      ['2026-03-05', 'left-out'],
      ['2026-03-06', 'waiting'],
      ['2026-03-07', 'other-size'],
      ['2026-03-08', 'other-place'],
    ]);
  });

  it('shows the side that most days show, and another when asked', () => {
    const photos = [
      photo('2026-03-01', { turnDeg: 90 }),
      photo('2026-03-08', { turnDeg: 92 }),
      photo('2026-03-08', { id: 'front' }),
    ];
    expect(filmSides(photos)).toEqual([
      { sideDeg: 90, days: 2 },
      { sideDeg: 0, days: 1 },
    ]);
    expect(castFilm(photos)?.frames.length).toBe(2);
    expect(castFilm(photos, { sideDeg: 0 })?.frames.map(({ photo: { id } }) => id)).toEqual(['front']);
    expect(sideOf({ turnDeg: 358 })).toBe(0);
  });

  it('takes the camera place of most days, the newer of two that are even', () => {
    const photos = [onStand('2026-03-01', {}, { place: 'a/1' }), onStand('2026-03-08', {}, { place: 'a/2' })];
    expect(filmPlaces(photos).map(({ place }) => place)).toEqual(['a/2', 'a/1']);
    expect(castFilm(photos)?.absent[0]?.absence).toBe('other-place');
    expect(castFilm(photos, { place: 'a/1' })?.frames[0]?.photo.day).toBe('2026-03-01');
  });

  it('opens a window that holds every outline and rim, with room below the rim', () => {
    const film = castFilm([photo('2026-03-01'), photo('2026-03-08')]);
    const { x, y, width, height } = (film as NonNullable<typeof film>).window;
    expect(x).toBeLessThan(400);
    expect(x + width).toBeGreaterThan(800);
    expect(y).toBeLessThan(700);
    expect(y + height).toBeGreaterThan(1300 + (700 - y));
    expect(width / height).toBeGreaterThanOrEqual(0.75 - 1e-9);
  });

  it('is null without photos', () => {
    expect(castFilm([])).toBeNull();
  });
});
