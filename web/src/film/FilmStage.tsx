import { useEffect, useId, useState } from 'react';
import type { Film } from '../../../core/film/cast-film.ts';
import type { Similarity } from '../../../core/stand/frame/similarity.ts';
import { BallLine } from '../photo/BallLine.tsx';
import overlay from '../photo/Overlay.module.css';
import { outlinePath } from '../photo/points.ts';
import styles from './FilmStage.module.css';
import { type FilmView, runningPicture, standingPicture } from './film-photos.ts';

/** A film that stands this long is drawn from the larger picture. */
const STANDS_MS = 400;

export const FILM_LINES = ['ball', 'outline'] as const;
export type FilmLine = (typeof FILM_LINES)[number];

/** The film's picture: all frames near the shown one lie over each other, and only that one is seen. */
export function FilmStage({
  film,
  index,
  isPlaying,
  lines,
  label,
}: {
  film: Film;
  index: number;
  isPlaying: boolean;
  lines: readonly FilmLine[];
  label: string;
}) {
  const id = useId();
  const { x, y, width, height } = film.window;
  const stands = useStands(index, isPlaying);
  const shown = film.frames[index];
  // The neighbours lie ready, so that a step shows at once.
  const near = film.frames.map((frame, at) => ({ frame, at })).filter(({ at }) => Math.abs(at - index) <= 1);
  const photo = shown?.photo as FilmView | undefined;
  return (
    <svg
      className={styles.stage}
      viewBox={`${x} ${y} ${width} ${height}`}
      style={{ aspectRatio: `${width} / ${height}`, '--aspect': width / height } as object}
      role="img"
      aria-label={label}
    >
      {near.map(({ frame, at }) => {
        const { view } = frame.photo as FilmView;
        return (
          <image
            key={view.id}
            href={runningPicture(view)}
            width={view.widthPx}
            height={view.heightPx}
            preserveAspectRatio="none"
            transform={matrixOf(frame.toStage)}
            opacity={at === index ? 1 : 0}
          />
        );
      })}
      {shown && photo && (
        <g transform={matrixOf(shown.toStage)}>
          {stands && (
            <image
              key={photo.id}
              href={standingPicture(photo.view)}
              width={photo.widthPx}
              height={photo.heightPx}
              preserveAspectRatio="none"
            />
          )}
          {lines.includes('outline') && (
            <>
              <path d={outlinePath(photo.outlinePx)} className={overlay.outlineCasing} />
              <path d={outlinePath(photo.outlinePx)} className={overlay.outline} />
            </>
          )}
          {lines.includes('ball') && photo.report?.ball && (
            <BallLine
              id={id}
              ball={photo.report.ball}
              axis={photo.report.axis}
              crop={{ x: 0, y: 0, width: photo.widthPx, height: photo.heightPx }}
            />
          )}
        </g>
      )}
    </svg>
  );
}

function useStands(index: number, isPlaying: boolean): boolean {
  const [standing, setStanding] = useState<number | null>(null);
  useEffect(() => {
    if (isPlaying) return;
    const timer = window.setTimeout(() => setStanding(index), STANDS_MS);
    return () => window.clearTimeout(timer);
  }, [index, isPlaying]);
  return !isPlaying && standing === index;
}

function matrixOf({ a, b, shiftX, shiftY }: Similarity): string {
  return `matrix(${a} ${b} ${-b} ${a} ${shiftX} ${shiftY})`;
}
