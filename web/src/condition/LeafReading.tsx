import type { Day } from '../../../core/day/day.ts';
import type { PlantLeaf } from '../../../server/schemas/condition.ts';
import { callLeafHealthy } from '../api/leaf.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import type { Layer } from '../photo/layers.ts';
import styles from './Condition.module.css';
import { LEARN_ANEW, NORMAL_MEANING, SHOW_ON_PHOTO } from './condition-words.ts';
import { LeafTable } from './LeafTable.tsx';

/** Green, yellow and brown leaf now and over the sittings, and what is normal for this plant. */
export function LeafReading({
  plantId,
  leaf,
  today,
  onShow,
}: {
  plantId: string;
  leaf: PlantLeaf;
  today: Day;
  onShow: (viewId: string, layer: Layer) => void;
}) {
  const { newest, notCompared } = leaf;
  return (
    <>
      <p>{leaf.words}</p>
      {notCompared.map((why) => (
        <p key={why} className={styles.sub}>
          {why}
        </p>
      ))}
      {newest !== null && newest.yellow.share > newest.yellow.plusMinus && (
        <div className={buttons.row}>
          <button type="button" className={buttons.quiet} onClick={() => onShow(newest.viewId, 'yellow')}>
            <Icon name="look" /> {SHOW_ON_PHOTO.yellow}
          </button>
        </div>
      )}
      <LeafTable history={leaf.history} today={today} />
      <NormalLeaf plantId={plantId} learned={leaf.learned} today={today} />
    </>
  );
}

function NormalLeaf({
  plantId,
  learned,
  today,
}: {
  plantId: string;
  learned: PlantLeaf['learned'];
  today: Day;
}) {
  const { busy, fault, send } = useSending();
  const { canLearnFrom, healthyDays, words } = learned;
  const teaching = canLearnFrom !== null && !healthyDays.includes(canLearnFrom) ? canLearnFrom : null;
  const call = (day: string, healthy: boolean) =>
    send(() =>
      callLeafHealthy(
        plantId,
        day,
        healthy,
        healthy ? LEARN_ANEW.told(day, today) : LEARN_ANEW.takenBack(day, today),
      ),
    );
  return (
    <>
      <h3>{LEARN_ANEW.name}</h3>
      <p>{words}</p>
      <p className={styles.sub}>{NORMAL_MEANING}</p>
      {(teaching !== null || healthyDays.length > 0) && (
        <div className={buttons.row}>
          {teaching !== null && (
            <button
              type="button"
              className={buttons.quiet}
              disabled={busy}
              onClick={() => call(teaching, true)}
            >
              <Icon name="leaf" /> {LEARN_ANEW.button(teaching, today)}
            </button>
          )}
          {healthyDays.map((day) => (
            <button
              key={day}
              type="button"
              className={buttons.quiet}
              disabled={busy}
              onClick={() => call(day, false)}
            >
              <Icon name="undo" /> {LEARN_ANEW.forget(day, today)}
            </button>
          ))}
        </div>
      )}
      {teaching !== null && <p className={styles.sub}>{LEARN_ANEW.caution}</p>}
      {fault !== null && <Fault fault={fault} />}
    </>
  );
}
