import type { Sitting } from '../../../server/schemas/sitting.ts';
import { Choices } from '../parts/Choices.tsx';
import { shortDayWords } from '../words/day-words.ts';

const NONE = { value: '', words: 'none' };

/** Which earlier sitting lies faint under the plan. */
export function EarlierChoice({
  sittings,
  chosenId,
  bySize,
  onChoose,
}: {
  sittings: readonly Sitting[];
  chosenId: string | null;
  /** Whether growth shows: both plans have mm. */
  bySize: boolean;
  onChoose: (sittingId: string | null) => void;
}) {
  if (sittings.length === 0) return null;
  return (
    <div>
      <Choices
        legend="Earlier sitting, dotted beneath"
        options={[...sittings.map(({ id, day }) => ({ value: id, words: shortDayWords(day) })), NONE]}
        chosen={chosenId ?? NONE.value}
        onChoose={(id) => onChoose(id || null)}
      />
      {!bySize && <p>One of the two has no millimetres: compare their shapes, not their sizes.</p>}
    </div>
  );
}
