import type { PlantKind } from '../../../core/plant.ts';
import type { PhotoReport } from '../../../core/report.ts';
import type { ComparePair } from '../compare/pairs.ts';
import type { Point } from '../photo/points.ts';
import type { Leaf } from '../plant/leafing.ts';
import type { SheetName } from '../plant/PlantSheets.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { MoreNumbers } from './MoreNumbers.tsx';
import { OutlineRow } from './OutlineRow.tsx';
import { MEASURES } from './reading.ts';
import styles from './ScoreList.module.css';
import { ScoreRow } from './ScoreRow.tsx';

/** Every number of one photo; each opens to what it means and how sure it is. */
export function ScoreList({
  kind,
  report,
  outlinePx,
  day,
  before,
  sinceStop,
  onOpen,
}: {
  kind: PlantKind;
  report: PhotoReport | null;
  outlinePx: readonly Point[];
  day: string;
  before: Leaf | null;
  /** The photos that show what came of the last stop. */
  sinceStop: ComparePair | null;
  onOpen: (sheet: SheetName) => void;
}) {
  const today = todayHere();
  return (
    <section aria-labelledby="scores-name">
      <h2 id="scores-name">Numbers</h2>
      {report?.status !== 'measured' ? (
        <p className={styles.sub}>This photo has no numbers. The reason stands over it.</p>
      ) : (
        <>
          <p className={styles.sub}>
            {dayWords(day, today)}
            {before
              ? `. Changes are since ${dayWords(before.sitting.day, today)}.`
              : '. There is no earlier measured photo to compare with.'}{' '}
            Open a number for its meaning.
          </p>
          {sinceStop && (
            <button
              type="button"
              className={styles.link}
              onClick={() => onOpen({ name: 'compare', leaf: sinceStop.later, earlier: sinceStop.earlier })}
            >
              What changed since the last stop
            </button>
          )}
          <div className={styles.list}>
            <OutlineRow report={report} />
            {MEASURES.map((measure) => (
              <ScoreRow
                key={measure}
                measure={measure}
                report={report}
                outlinePx={outlinePx}
                before={before?.view.report ?? null}
              />
            ))}
          </div>
          <MoreNumbers report={report} before={before?.view.report ?? null} kind={kind} />
          {!report.scale && (
            <p className={styles.sub}>
              Millimetres need a scale: the pot rim’s measure, or the stand sheet in the photo.{' '}
              <button type="button" className={styles.link} onClick={() => onOpen({ name: 'plant' })}>
                Give or check the rim
              </button>
            </p>
          )}
        </>
      )}
    </section>
  );
}
