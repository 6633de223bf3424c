import { Link } from 'wouter';
import type { Bench } from '../../../server/schemas/pages.ts';
import { Icon } from '../parts/Icon.tsx';
import { countWords } from '../words/plant-words.ts';
import styles from './PlantNeed.module.css';
import { isWantedNow } from './work/is-wanted-now.ts';

/** What a plant needs, in words: the photo's own trouble first, then its advice. */
export function PlantNeed({ row, large }: { row: Bench['plants'][number]; large: boolean }) {
  const { newest, advice } = row;
  const trouble = newest ? photoTrouble(newest) : null;
  const shown = advice.filter(({ urgency }) => urgency > 0).slice(0, large ? 3 : 1);
  const more = advice.filter(({ urgency }) => urgency > 0).length - shown.length;
  return (
    <div className={styles.need}>
      {trouble && <p className={styles.trouble}>{trouble}</p>}
      {shown.map((piece) => (
        <div key={piece.what} className={styles.piece}>
          <Icon name={piece.kind} />
          <p>
            <strong>{piece.what}</strong> {large && [piece.where, piece.howMuch].filter(Boolean).join(' ')}
            {piece.kind === 'shorten' && (
              <Link href={`/plants/${row.plant.id}/cut-list`} className={styles.way}>
                Open the cut list
              </Link>
            )}
          </p>
        </div>
      ))}
      {more > 0 && <p className={styles.more}>and {countWords(more, 'more thing')}</p>}
      {shown.length === 0 && !trouble && (
        <p>
          {newest === null
            ? 'It waits for its first photo.'
            : row.work.some(isWantedNow)
              ? 'Only the work for today.'
              : 'Nothing needs doing.'}
        </p>
      )}
    </div>
  );
}

function photoTrouble({
  state,
  failure,
  report,
}: NonNullable<Bench['plants'][number]['newest']>): string | null {
  if (state === 'received' || state === 'measuring') return 'The newest photo is being measured…';
  if (state === 'failed') return failure ?? 'The newest photo could not be measured. Measure it anew.';
  return report?.hint ?? null;
}
