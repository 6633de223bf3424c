import type { Day } from '../../../core/day/day.ts';
import type { PlantYear } from '../../../server/schemas/season.ts';
import { numberWords, plusMinusWords } from '../measures/reading.ts';
import { dayWords } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';

type YearSitting = PlantYear['sittings'][number];
export type YearMeasure = 'roundness' | 'symmetry' | 'lopsidedness';

export const YEAR_MEASURES: readonly YearMeasure[] = ['roundness', 'symmetry', 'lopsidedness'];

/** "84 ±1.6", "6.1 % ±0.8 to the right"; "not known" where it was not measured. */
export function scoreWords(sitting: YearSitting, measure: YearMeasure): string {
  const score = sitting[measure];
  if (score === null) return 'not known';
  const doubt = plusMinusWords(score.plusMinus);
  if (measure !== 'lopsidedness') return `${numberWords(score.value, measure)} ${doubt}`;
  const amount = Math.abs(score.value);
  const side = amount <= score.plusMinus ? 'even' : score.value > 0 ? 'to the right' : 'to the left';
  return `${numberWords(amount, measure)} % ${doubt}, ${side}`;
}

/** What happened in the year, each fact with its name; what is not noted says so. */
export function yearFacts(year: PlantYear, today: Day): (readonly [name: string, words: string])[] {
  const { show, result, bloom, atShow } = year;
  const say = (on: string) => dayWords(on, today);
  return [
    ['Show', show === null ? 'Entered for none in this time.' : showFact(show, say)],
    ...(show === null ? [] : [['At the show', result ?? 'Not written down.'] as const]),
    ...(show === null
      ? []
      : [
          [
            'Shape near the show',
            atShow === null
              ? 'No measured photo in the fortnight before it.'
              : `Roundness ${scoreWords(atShow as YearSitting, 'roundness')}, symmetry ${scoreWords(atShow as YearSitting, 'symmetry')}, on ${say(atShow.day)}.`,
          ] as const,
        ]),
    ['First flower', bloom.firstFlowerDay === null ? 'Not noted.' : `${say(bloom.firstFlowerDay)}.`],
    ['Full bloom', bloomFact(bloom, say)],
  ];
}

function showFact({ name, day, place }: NonNullable<PlantYear['show']>, say: (on: string) => string): string {
  return `${name}, ${say(day)}${place ? `, ${place}` : ''}.`;
}

function bloomFact(
  { fullBloomDay, daysFromLastStop, daysAfterShow }: PlantYear['bloom'],
  say: (on: string) => string,
): string {
  if (fullBloomDay === null) return 'Not noted.';
  const since =
    daysFromLastStop === null ? '' : `, ${countWords(daysFromLastStop, 'day')} from the last stop`;
  const about =
    daysAfterShow === null
      ? ''
      : daysAfterShow === 0
        ? ', on the day of the show'
        : `, ${countWords(Math.abs(daysAfterShow), 'day')} ${daysAfterShow > 0 ? 'after' : 'before'} the show`;
  return `${say(fullBloomDay)}${since}${about}.`;
}
