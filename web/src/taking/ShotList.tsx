import type { View } from '../../../server/schemas/sitting.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { SendingRow } from '../photos/SendingRow.tsx';
import type { Sending } from '../photos/sending.ts';
import { viewWords } from '../photos/sending-words.ts';
import styles from './ShotList.module.css';
import { shotName } from './taking-words.ts';
import type { TurnPlan } from './turn-plan.ts';

/** Every planned shot with what came of it, then those beside the plan and those on their way. */
export function ShotList({
  plan,
  onTheirWay,
  targetDeg,
  onChoose,
  onCorrect,
}: {
  plan: TurnPlan;
  onTheirWay: readonly Sending[];
  targetDeg: number | null;
  onChoose: (turnDeg: number) => void;
  onCorrect: (view: View) => void;
}) {
  return (
    <section aria-labelledby="shots-name" className={styles.shots}>
      <h2 id="shots-name">Shots</h2>
      {onTheirWay.length > 0 && (
        <ul className={styles.list} aria-label="On their way">
          {onTheirWay.map((sending) => (
            <SendingRow key={sending.key} sending={sending} view={null} />
          ))}
        </ul>
      )}
      <ol className={styles.list}>
        {plan.slots.map(({ turnDeg, view }, index) => (
          <li key={turnDeg} className={styles.shot} data-next={turnDeg === targetDeg || undefined}>
            {view ? (
              <TakenShot name={`${index + 1}. ${shotName(turnDeg)}`} view={view} onCorrect={onCorrect} />
            ) : (
              <button type="button" className={styles.open} onClick={() => onChoose(turnDeg)}>
                <span className={styles.name}>
                  {index + 1}. {shotName(turnDeg)}
                </span>
                <span>{turnDeg === targetDeg ? 'Next' : 'Not taken yet. Tap to take it next.'}</span>
              </button>
            )}
          </li>
        ))}
        {plan.beside.map((view) => (
          <li key={view.id} className={styles.shot}>
            <TakenShot
              name={view.turnDeg === null ? 'Turn not known' : `Beside the plan: ${shotName(view.turnDeg)}`}
              view={view}
              onCorrect={onCorrect}
            />
          </li>
        ))}
      </ol>
    </section>
  );
}

function TakenShot({ name, view, onCorrect }: { name: string; view: View; onCorrect: (view: View) => void }) {
  return (
    <>
      <div className={styles.picture}>
        <Photo view={view} crop={plantCrop(view, 1)} label="" detail={320} />
      </div>
      <div className={styles.words}>
        <p className={styles.name}>{name}</p>
        <p role="status" data-wrong={view.report?.hint || view.state === 'failed' ? true : undefined}>
          {viewWords(view)}
        </p>
        {view.turnFrom === 'collar' && <p>Turn read from the collar.</p>}
      </div>
      <button type="button" className={buttons.icon} onClick={() => onCorrect(view)}>
        <Icon name="edit" />
        <span className="only-heard">Correct: {name}</span>
      </button>
    </>
  );
}
