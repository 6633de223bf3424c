import { useQuery } from '@tanstack/react-query';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { PlantSeasonAnswer } from '../../../server/schemas/season.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { cutListQuery } from '../api/cuts.ts';
import { CutPhoto } from '../cut-list/CutPhoto.tsx';
import { CutPlan } from '../cut-list/CutPlan.tsx';
import { type ListedCut, listedCuts } from '../cut-list/listed-cut.ts';
import { listedSittings } from '../cut-list/listed-sittings.ts';
import { useShownView } from '../cut-list/use-shown-view.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { numberWords, plusMinusWords, readMeasure } from '../measures/reading.ts';
import { dayWords, showWords, todayHere } from '../words/day-words.ts';
import { kindAndVariety } from '../words/plant-words.ts';
import styles from './BenchCard.module.css';
import { CardCuts } from './CardCuts.tsx';
import { CardDates } from './CardDates.tsx';

/** Px across a drawing, so that words on it come out in 8 to 9 pt on paper. */
const DRAWN_PX = 390;

/** The card itself, as it is printed: plant, newest photo, plan from above, cut list, next dates. */
export function BenchCard({ page, season }: { page: PlantPage; season: PlantSeasonAnswer }) {
  const { plant } = page;
  const today = todayHere();
  const sitting = listedSittings(page.sittings)[0];
  const facts = [
    kindAndVariety(plant),
    plant.rimMm === null ? null : `rim ${plant.rimMm} mm`,
    plant.showDay && `show ${dayWords(plant.showDay, today)}, ${showWords(plant.showDay, today)}`,
  ].filter(Boolean);
  return (
    <article className={styles.card} aria-label={`Bench card of ${plant.name}`}>
      <header className={styles.name}>
        <h2 translate="no">{plant.name}</h2>
        <p>{facts.join(' · ')}</p>
      </header>
      {sitting ? (
        <CardOfSitting key={sitting.id} page={page} sitting={sitting} />
      ) : (
        <p>No photo is measured yet; photo, plan and cuts will stand here.</p>
      )}
      <CardDates season={season} today={today} />
      <footer className={styles.foot}>Printed {dayWords(today, today)}. Room for notes:</footer>
    </article>
  );
}

function CardOfSitting({ page, sitting }: { page: PlantPage; sitting: Sitting }) {
  const { data: list, error } = useQuery(cutListQuery(page.plant.id, sitting.id));
  if (!list) return <p role="status">{error ? error.message : 'Making the cut list…'}</p>;
  return <Drawn page={page} sitting={sitting} list={list} cuts={listedCuts(list)} />;
}

function Drawn({
  page,
  sitting,
  list,
  cuts,
}: {
  page: PlantPage;
  sitting: Sitting;
  list: Parameters<typeof listedCuts>[0];
  cuts: readonly ListedCut[];
}) {
  const { view } = useShownView(sitting, list, null);
  const today = todayHere();
  const report = view?.report ?? null;
  return (
    <>
      <div className={styles.drawings}>
        {view && (
          <figure>
            <CutPhoto
              view={view}
              list={list}
              cuts={cuts}
              held={null}
              label={`${page.plant.name}, ${dayWords(sitting.day, today)}`}
              printedPx={DRAWN_PX}
              onTell={() => {}}
            />
            <figcaption>{dayWords(sitting.day, today)}. Yellow bar: cut here. Ring: the ball.</figcaption>
          </figure>
        )}
        {sitting.turned ? (
          <figure>
            <CutPlan report={sitting.turned} cuts={cuts} held={null} printedPx={DRAWN_PX} onTake={() => {}} />
            <figcaption>Seen from above, the mark at 6 o’clock.</figcaption>
          </figure>
        ) : (
          <p className={styles.none}>
            No plan from above: it needs photos of the plant turned, four of them a quarter turn or an eighth
            apart.
          </p>
        )}
      </div>
      {report && (
        <dl className={styles.scores}>
          {(['roundness', 'symmetry', 'lopsidedness', 'size'] as const).map((measure) => {
            const { value, plusMinus, unit, aside } = readMeasure(report, measure);
            return (
              <div key={measure}>
                <dt>{MEASURE_NAMES[measure]}</dt>
                <dd>
                  {value === null ? (
                    'not known'
                  ) : (
                    <>
                      <b>{numberWords(value, measure)}</b> {plusMinusWords(plusMinus)} {unit}
                      {measure === 'lopsidedness' && aside ? ` ${aside}` : ''}
                    </>
                  )}
                </dd>
              </div>
            );
          })}
        </dl>
      )}
      <CardCuts cuts={cuts} list={list} />
    </>
  );
}
