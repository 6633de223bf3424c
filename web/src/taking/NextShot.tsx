import { lazy, Suspense, useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { cameraAccess } from '../camera/camera-access.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { OtherDay } from '../photos/OtherDay.tsx';
import { queuePhotos } from '../photos/send-queue.ts';
import { HowItShouldLook } from './HowItShouldLook.tsx';
import styles from './NextShot.module.css';
import { StandFromAbove } from './StandFromAbove.tsx';
import { takingChoice } from './taking-choice.ts';
import { stepWords } from './taking-words.ts';
import { turnsForFiles } from './turn-plan.ts';
import type { Taking } from './use-taking.ts';

const LiveShot = lazy(() => import('./LiveShot.tsx'));

/** What to do now: how to turn the pot, what to see, and the shutter. */
export function NextShot({
  page,
  taking,
  targetDeg,
  onChoose,
}: {
  page: PlantPage;
  taking: Taking;
  targetDeg: number | null;
  onChoose: (turnDeg: number | null) => void;
}) {
  const { plan, sitting, standsAtDeg, onTheirWay } = taking;
  const { collar } = takingChoice.useValue();
  const [day, setDay] = useState('');
  const [live, setLive] = useState(false);
  const { slots } = plan;
  const at = slots.findIndex(({ turnDeg }) => turnDeg === targetDeg);

  function take(files: File[]) {
    const coming = onTheirWay.map(({ turnDeg }) => turnDeg);
    const { ordered, turnsDeg } = turnsForFiles(files, plan, { firstDeg: targetDeg, coming });
    // With the collar the photo itself says its turn.
    queuePhotos(page.plant, ordered, day || taking.day, collar ? [] : turnsDeg);
    onChoose(null);
  }

  return (
    <section className={styles.next} aria-labelledby="next-name">
      <div>
        <p className={styles.count} role="status">
          {targetDeg === null
            ? `All ${slots.length === 1 ? 'is' : slots.length} taken`
            : at < 0
              ? 'One more shot'
              : `Shot ${at + 1} of ${slots.length}`}
        </p>
        <h2 id="next-name" className={styles.step}>
          {targetDeg === null ? 'Every shot is in' : stepWords(targetDeg, standsAtDeg)}
        </h2>
      </div>
      <StandFromAbove slots={slots} targetDeg={targetDeg} standsAtDeg={standsAtDeg} onChoose={onChoose} />
      {targetDeg !== null && <HowItShouldLook page={page} sitting={sitting} turnDeg={targetDeg} />}
      <div className={styles.take}>
        <PickFile words="Take this shot" icon="camera" camera loud onPick={take} />
        <PickFile words="From files" icon="file" many onPick={take} />
      </div>
      {targetDeg !== null && cameraAccess() === 'open' && (
        <button type="button" className={buttons.quiet} onClick={() => setLive(true)}>
          <Icon name="overlay" /> Live picture with the lines to meet
        </button>
      )}
      <p className={styles.hint}>
        {collar
          ? 'The collar tells the turn of each photo, so they may come in any order.'
          : 'In any order: tap a number on the drawing to take that shot next. Several files at once go to the open turns in the order of their names.'}
      </p>
      {taking.day === null && <OtherDay day={day} onChange={setDay} />}
      <Suspense fallback={null}>
        {live && targetDeg !== null && (
          <LiveShot
            page={page}
            sitting={sitting}
            turnDeg={targetDeg}
            title={stepWords(targetDeg, standsAtDeg)}
            onShot={(file) => take([file])}
            onClose={() => setLive(false)}
          />
        )}
      </Suspense>
    </section>
  );
}
