import { useRef } from 'react';
import type { Stand } from '../../../server/schemas/stand.ts';
import { useWidth } from '../photo/use-width.ts';
import styles from './EmptyPhotoCheck.module.css';
import { lengthWords } from './length-entry.ts';

type EmptyPhoto = NonNullable<Stand['emptyPhoto']>;

const SHARP_WORDS = {
  good: 'sharp',
  blurred: 'blurred',
  unknown: 'cannot be told: nothing has an edge',
} as const;
const BRIGHT_WORDS = { good: 'good', 'too-dark': 'too dark', 'too-bright': 'too bright' } as const;

/** The empty photo with the marks found on it, whether it will do, and what to do if not. */
export function EmptyPhotoCheck({ photo }: { photo: EmptyPhoto }) {
  const { check, reading } = photo;
  const facts = [
    ['Light', BRIGHT_WORDS[check.brightness], check.brightness === 'good'],
    ['Focus', SHARP_WORDS[check.sharpness], check.sharpness !== 'blurred'],
    reading && [
      'Ring marks',
      `${reading.marksFound} of ${reading.marksOfSheet} found`,
      reading.marksFound === reading.marksOfSheet,
    ],
    reading?.cameraDistanceMm != null && ['Camera to pot', lengthWords(reading.cameraDistanceMm), true],
    reading && ['Grey patches', reading.greyFound ? 'read' : 'not read', reading.greyFound],
  ].filter((fact): fact is [string, string, boolean] => Boolean(fact));
  return (
    <div className={styles.check}>
      <MarkedPicture photo={photo} />
      <div className={styles.said} role="status">
        <p className={styles.verdict} data-good={check.good}>
          {check.good ? '● It will do.' : '▲ Better take it again.'}
        </p>
        <p>{check.words}</p>
        {reading && reading.words !== check.words && <p>{reading.words}</p>}
        <dl className={styles.facts}>
          {facts.map(([name, words, good]) => (
            <div key={name} data-good={good}>
              <dt>{name}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </div>
    </div>
  );
}

function MarkedPicture({ photo }: { photo: EmptyPhoto }) {
  const place = useRef<SVGSVGElement>(null);
  const width = useWidth(place);
  const unitPx = width > 0 ? photo.widthPx / width : 0;
  return (
    <svg
      ref={place}
      className={styles.picture}
      viewBox={`0 0 ${photo.widthPx} ${photo.heightPx}`}
      role="img"
      aria-label="The empty stand, with the ring marks found on it"
    >
      <image href={`${photo.url}?width=800`} width={photo.widthPx} height={photo.heightPx} />
      {photo.reading?.marksPx.map(([x, y]) => (
        <g key={`${x} ${y}`}>
          <circle cx={x} cy={y} r={11 * unitPx} className={styles.markCasing} />
          <circle cx={x} cy={y} r={11 * unitPx} className={styles.mark} />
        </g>
      ))}
    </svg>
  );
}
