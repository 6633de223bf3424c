import { Link } from 'wouter';
import { inTwoPasses } from '../../../core/cut/working-order.ts';
import type { CutList } from '../../../server/schemas/cuts.ts';
import buttons from '../parts/buttons.module.css';
import { Choices } from '../parts/Choices.tsx';
import { Icon } from '../parts/Icon.tsx';
import { todayHere } from '../words/day-words.ts';
import styles from './CutPasses.module.css';
import { CutRow } from './CutRow.tsx';
import type { ListedCut } from './listed-cut.ts';
import { photographPath } from './photograph-path.ts';
import type { Marking } from './use-marking.ts';
import { ORDER_WORDS, workingOrder } from './working-order.ts';

const PASS_NAMES = { tip: 'First pass: tip stops', deep: 'Second pass: deeper' } as const;

interface CutPassesProps {
  readonly list: CutList;
  readonly cuts: readonly ListedCut[];
  readonly held: ListedCut | null;
  /** The next one to make. */
  readonly next: ListedCut | null;
  readonly marking: Marking;
  /** Takes a cut in hand to be shown on the drawing; `null` goes back to the next open one. */
  readonly onHold: (cutId: string | null) => void;
}

/** The cuts one a row, tips first and deeper ones after another look where the grower works so. */
export function CutPasses(props: CutPassesProps) {
  const order = workingOrder.useValue();
  const passes = inTwoPasses(props.cuts);
  if (passes.length < 2) return <CutRows {...props} label="Cuts" />;
  return (
    <>
      <Choices
        legend="Order of working"
        options={ORDER_WORDS}
        chosen={order}
        onChoose={(chosen) => workingOrder.write(chosen)}
      />
      {order === 'once-round' ? (
        <CutRows {...props} label="Cuts, once round the plant" />
      ) : (
        passes.map(({ stop, cuts }) => (
          <div key={stop} className={styles.pass}>
            {stop === 'deep' && <LookAgain list={props.list} />}
            <h3>{PASS_NAMES[stop]}</h3>
            <p className={styles.why}>
              {stop === 'tip'
                ? 'The soft tips come off first. The plant is still whole enough to show what each of the rest is for.'
                : 'These go further back into the stem. Take only what still stands out once the tips are off.'}
            </p>
            <CutRows {...props} cuts={cuts} label={PASS_NAMES[stop]} />
          </div>
        ))
      )}
    </>
  );
}

function CutRows({ cuts, list, held, next, marking, label, onHold }: CutPassesProps & { label: string }) {
  return (
    <ol className={styles.rows} aria-label={label}>
      {cuts.map((cut) => (
        <CutRow
          key={cut.id}
          cut={cut}
          turned={list.from === 'turned'}
          held={held?.id === cut.id}
          next={next?.id === cut.id}
          marking={marking}
          onHold={onHold}
        />
      ))}
    </ol>
  );
}

/** Between the passes: what is cut cannot be put back, so the eye comes first. */
function LookAgain({ list }: { list: CutList }) {
  const today = todayHere();
  const sameDay = list.day === today;
  return (
    <div className={styles.look}>
      <h3>Look again</h3>
      <p>
        Step back, turn the pot once round and look.{' '}
        {sameDay
          ? 'A photo that comes in after the first tick shows what the tips left, and is compared with the plan.'
          : 'A fresh photo makes the list anew without the tips that are gone.'}
      </p>
      {(!sameDay || list.cuts.some(({ state }) => state === 'done')) && (
        <div className={buttons.row}>
          <Link href={photographPath(list, today)} className={buttons.quiet}>
            <Icon name="camera" /> Photograph it between the passes
          </Link>
        </div>
      )}
    </div>
  );
}
