import { sideWords } from '../../../core/turned/place-words.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { recordTurn } from '../api/turns.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { todayHere } from '../words/day-words.ts';
import { capital } from '../words/turn-words.ts';
import styles from './LightSection.module.css';
import { facesAfter, rhythmStepDeg, turnedTodayWords } from './light-words.ts';
import { stepsToOffer } from './steps-to-offer.ts';

/** A turn written down in one tap: the advised one first, the rhythm's beside it when it is another. */
export function TurnNow({ page, onOther }: { page: PlantPage; onOther: () => void }) {
  const { plant, light } = page;
  const { nowFacesDeg } = light.ledger;
  const { busy, fault, send } = useSending();
  if (nowFacesDeg === null) {
    return (
      <div className={styles.tap}>
        <button type="button" className={buttons.button} onClick={onOther}>
          <Icon name="turn" /> Say which side faces the light
        </button>
      </div>
    );
  }
  const record = (clockwiseDeg: number) => {
    const facesLightDeg = facesAfter(nowFacesDeg, clockwiseDeg);
    const words = `Written down: ${sideWords(facesLightDeg)} faces the light from today.`;
    void send(() => recordTurn(plant.id, { day: todayHere(), facesLightDeg }, words));
  };
  const steps = stepsToOffer(light.next?.turnByDeg ?? null, rhythmStepDeg(plant.turnRhythm));
  return (
    <div className={styles.tap}>
      {steps.map((clockwiseDeg, index) => (
        <button
          key={clockwiseDeg}
          type="button"
          className={index === 0 ? buttons.button : buttons.quiet}
          disabled={busy}
          onClick={() => record(clockwiseDeg)}
        >
          <Icon name="turn" /> {capital(turnedTodayWords(clockwiseDeg))}
        </button>
      ))}
      <button type="button" className={buttons.quiet} onClick={onOther}>
        Another turn, or another day
      </button>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
