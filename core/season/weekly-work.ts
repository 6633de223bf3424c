import { addDays, type Day } from '../day/day.ts';
import { requirePositiveInteger } from '../errors/expect.ts';
import { type DayRange, type PlantSeason, type Work, workKey } from './work.ts';

type Weekly = Pick<Work, 'kind' | 'what' | 'why' | 'standing' | 'caution'>;

const PHOTOGRAPH: Weekly = {
  kind: 'photograph',
  what: 'Photograph it, mark to the camera, before you turn it.',
  why: 'The trend needs one photo a week from the same side.',
  standing: 'Our own choice.',
  caution: null,
};

const TURN: Weekly = {
  kind: 'turn',
  what: 'Turn the pot.',
  why: 'Growth leans to the light; turned in time the plant stays even.',
  standing:
    'A quarter turn a week: Penney, congresburygardening.org.uk, and two more growers; your own rhythm goes before it.',
  caution: null,
};

const LOOK_OVER: Weekly = {
  kind: 'look-over',
  what: 'Clear yellow and dead leaf and fallen petals; look under the leaves for whitefly, and for grey mould.',
  why: 'Grey mould wants leaves wet for 4 to 12 hours at 15 to 25 °C, and a fallen petal on a leaf makes it many times likelier; cold does not promise safety. Whitefly goes round in 21 to 45 days, and its young sit under the leaves.',
  standing:
    'Sirjusingh and Sutton (1996), Plant Disease 80:160; Sirjusingh, Sutton and Tsujita (1996), 80:154; Kessler and Cobb, Auburn. Once a week: our own choice.',
  caution: 'Sap may trouble the skin: wear gloves if it does, and keep what you clear from cats and dogs.',
};

/**
 * Work that comes round: photograph, turn, look the plant over. Counted from the last time it was done, up to the show.
 *
 * @param range only what falls into it is listed
 *
 * Notes: each round is of use until the next one comes, so no more than one of a kind ever waits.
 */
export function weeklyWork(season: PlantSeason, today: Day, range: DayRange): Work[] {
  const looked = season.log
    .filter(({ kind }) => kind === 'cleared-leaf' || kind === 'looked-under-leaves')
    .map(({ day }) => day);
  // The light ledger tells which side faced the light; where no side is known, a turn is a line of the log.
  const logged = season.log.filter(({ kind }) => kind === 'turned').map(({ day }) => day);
  return [
    ...rounds(PHOTOGRAPH, season.rhythm.photographDays, season.sittingDays),
    ...rounds(TURN, season.turnRhythm.everyDays, [...season.turnDays, ...logged]),
    ...rounds(LOOK_OVER, season.rhythm.lookOverDays, looked),
  ];

  function rounds(work: Weekly, everyDays: number | null, doneOn: readonly Day[]): Work[] {
    if (everyDays === null) return [];
    requirePositiveInteger(everyDays, 'everyDays');
    const last = doneOn
      .filter((day) => day <= today)
      .sort()
      .at(-1);
    const first = last === undefined ? season.fromDay : addDays(last, everyDays);
    const end = season.show !== null && season.show.day < range.to ? season.show.day : range.to;
    const found: Work[] = [];
    for (let day = first; day <= end; day = addDays(day, everyDays)) {
      const until = addDays(day, everyDays - 1);
      if (until < range.from) continue;
      const key = workKey(season.plantId, work.kind, day);
      found.push({ ...work, key, plantId: season.plantId, day, dueBy: day, until, doneOn: null });
    }
    return found;
  }
}
