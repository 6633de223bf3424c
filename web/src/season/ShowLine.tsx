import type { Plant } from '../../../server/schemas/plant.ts';
import type { PlantSeasonAnswer } from '../../../server/schemas/season.ts';
import { planForShow } from '../api/shows.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { CheckList } from '../shows/CheckList.tsx';
import { dayWords, showWords, todayHere } from '../words/day-words.ts';
import styles from './SeasonSection.module.css';

/** One show of the plant: when, in which class, and what the plan means for it. */
export function ShowLine({
  plant,
  entry,
  onChange,
}: {
  plant: Plant;
  entry: PlantSeasonAnswer['entries'][number];
  onChange: () => void;
}) {
  const { show, isAim, isOver, checks, effect, result } = entry;
  const { busy, fault, send } = useSending();
  const today = todayHere();
  const className = show.classes.find(({ id }) => id === entry.classId)?.name;
  const where = [show.place, className].filter(Boolean).join('; ');
  return (
    <div className={styles.show} data-aim={isAim || undefined}>
      <h3>{show.name}</h3>
      <p>
        <b>{dayWords(show.day, today)}</b>, {showWords(show.day, today)}
        {isAim && '. The stops are planned for this show.'}
      </p>
      {where !== '' && <p className={styles.sub}>{where}</p>}
      <CheckList checks={checks} />
      {effect && <p>{effect.words}</p>}
      {isOver && result !== '' && (
        <p>
          <b>On the day:</b> {result}
        </p>
      )}
      <div className={buttons.row}>
        {!isAim && !isOver && (
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => send(() => planForShow(plant, show))}
          >
            <Icon name="plan" /> Plan the stops for this one
          </button>
        )}
        <button type="button" className={buttons.quiet} onClick={onChange}>
          <Icon name="edit" /> {isOver ? (result === '' ? 'Note the result' : 'Change') : 'Class'}
          <span className="only-heard"> at {show.name}</span>
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
