import { sideWords } from '../../../core/turned/place-words.ts';
import type { Turn } from '../../../server/schemas/light.ts';
import { removeTurn } from '../api/turns.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import fold from '../parts/twin.module.css';
import { useSending } from '../parts/use-sending.ts';
import diary from '../plant/Diary.module.css';
import { dayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import { capital } from '../words/turn-words.ts';

/** The record of turns, newest first; each can be changed or removed. */
export function TurnList({
  plantId,
  turns,
  onChange,
}: {
  plantId: string;
  turns: readonly Turn[];
  onChange: (turn: Turn) => void;
}) {
  const { busy, fault, send } = useSending();
  if (turns.length === 0) return null;
  const today = todayHere();
  return (
    <details className={fold.twin}>
      <summary>{countWords(turns.length, 'turn')} written down</summary>
      {fault !== null && <Fault fault={fault} />}
      <ul className={diary.list}>
        {turns.map((turn) => (
          <li key={turn.id} className={diary.entry}>
            <p className={diary.day}>{dayWords(turn.day, today)}</p>
            <p className={diary.words}>
              {capital(sideWords(turn.facesLightDeg))} to the light. {turn.note}
            </p>
            <div className={diary.acts}>
              <button type="button" className={buttons.icon} onClick={() => onChange(turn)}>
                <Icon name="edit" />
                <span className="only-heard">Change the turn of {dayWords(turn.day, today)}</span>
              </button>
              <button
                type="button"
                className={buttons.icon}
                disabled={busy}
                onClick={() => send(() => removeTurn(plantId, turn.id))}
              >
                <Icon name="remove" />
                <span className="only-heard">Remove the turn of {dayWords(turn.day, today)}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
}
