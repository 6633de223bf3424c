import { useState } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { isDoubtful, sureWords } from '../photo/outline-words.ts';
import styles from './Corrections.module.css';
import type { Leaf } from './leafing.ts';
import { isMendable } from './mendable.ts';
import { OutlineBar } from './OutlineBar.tsx';
import type { SheetName } from './PlantSheets.tsx';

/** All that puts a photo right by hand, folded away unless the outline is doubtful or the photo was refused. */
export function Corrections({
  plantId,
  leaf: { view, sitting },
  onOpen,
}: {
  plantId: string;
  leaf: Leaf;
  onOpen: (sheet: SheetName) => void;
}) {
  const [isWanted] = useState(() => wantsMending(view));
  const measured = view.report?.status === 'measured';
  const confidence = measured ? (view.report?.confidence ?? null) : null;
  const doubtful = isDoubtful(confidence);
  return (
    <details className={styles.corrections} open={isWanted}>
      <summary>
        <b>Put this photo right</b>
        {confidence !== null && (
          <span className={styles.sure} data-doubtful={doubtful || undefined}>
            Outline {sureWords(confidence)}
          </span>
        )}
      </summary>
      <div className={styles.ways}>
        {doubtful && <p>Mend it, or see beside the numbers what would help.</p>}
        {isMendable(view) && (
          <OutlineBar
            plantId={plantId}
            view={view}
            onMend={() => onOpen({ name: 'mend', view })}
            onRim={() => onOpen({ name: 'rim', view })}
          />
        )}
        <div className={styles.more}>
          <button
            type="button"
            className={buttons.quiet}
            onClick={() => onOpen({ name: 'photo', leaf: { view, sitting } })}
          >
            <Icon name="edit" /> Correct or remove this photo
          </button>
          {sitting.leftOut === null && (
            <button
              type="button"
              className={buttons.quiet}
              onClick={() => onOpen({ name: 'leave-out', sitting })}
            >
              Leave this sitting out
            </button>
          )}
        </div>
      </div>
    </details>
  );
}

function wantsMending(view: View): boolean {
  const { report } = view;
  return isMendable(view) && (report?.status !== 'measured' || isDoubtful(report.confidence));
}
