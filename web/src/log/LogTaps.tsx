import { useState } from 'react';
import { isDay } from '../../../core/day/day.ts';
import { LOG_WORDS, type LogKind } from '../../../core/season/log-entry.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { writeInLog } from '../api/log.ts';
import { recordUsualTurn } from '../light/record-usual-turn.ts';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import type { SheetName } from '../plant/PlantSheets.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './LogSection.module.css';
import { LOG_ICONS } from './log-lines.ts';

/** What is done and seen most. A turn is written down in the record of turns, so that the light knows of it. */
const OFFERED: readonly { readonly name: string; readonly kinds: readonly LogKind[] }[] = [
  {
    name: 'Done',
    kinds: [
      'watered',
      'fed',
      'turned',
      'cleared-leaf',
      'looked-under-leaves',
      'potted-on',
      'took-missed-tips',
    ],
  },
  { name: 'Seen', kinds: ['seen-breaks', 'seen-whitefly', 'seen-grey-mould', 'seen-wilt'] },
  { name: 'Bloom', kinds: ['first-flower', 'full-bloom', 'bloom-taken-off', 'bloom-over'] },
];

/** One tap a line of the log, for today or for the day chosen. */
export function LogTaps({ page, onOpen }: { page: PlantPage; onOpen: (sheet: SheetName) => void }) {
  const today = todayHere();
  const [day, setDay] = useState<string>(today);
  const { busy, fault, send } = useSending();
  const chosen = isDay(day) ? day : today;
  const when = chosen === today ? 'today' : dayWords(chosen, today);

  function write(kind: LogKind): void {
    if (kind !== 'turned') {
      void send(() =>
        writeInLog(page.plant.id, { day: chosen, kind }, `Written down: ${LOG_WORDS[kind]}, ${when}.`),
      );
    } else if (page.light.ledger.nowFacesDeg === null) onOpen({ name: 'turn', turn: null });
    else void send(() => recordUsualTurn(page, chosen));
  }

  return (
    <div className={styles.taps}>
      <div className={styles.day}>
        <Field label="One tap writes it down for">
          {(wiring) => (
            <input
              {...wiring}
              type="date"
              max={today}
              value={day}
              onChange={(event) => setDay(event.target.value)}
            />
          )}
        </Field>
        <p className={styles.none}>{chosen === today ? 'today' : when}</p>
      </div>
      {OFFERED.map(({ name, kinds }) => (
        <fieldset key={name} className={styles.group}>
          <legend>{name}</legend>
          {kinds.map((kind) => (
            <button
              key={kind}
              type="button"
              className={styles.tap}
              disabled={busy}
              onClick={() => write(kind)}
            >
              <Icon name={LOG_ICONS[kind]} size={18} /> {LOG_WORDS[kind]}
            </button>
          ))}
        </fieldset>
      ))}
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
