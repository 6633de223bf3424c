import { countWords } from '../words/plant-words.ts';

/** Says of how many plants a bloom is still being reckoned; nothing when of none. */
export function BloomsUnderWay({ rows }: { rows: readonly { readonly isBloomUnderWay: boolean }[] }) {
  const count = rows.filter(({ isBloomUnderWay }) => isBloomUnderWay).length;
  if (count === 0) return null;
  return (
    <p role="status">
      The bloom of {countWords(count, 'plant')} is still being reckoned. The work that follows from it comes
      by itself.
    </p>
  );
}
