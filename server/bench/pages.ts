import { nextTurnOf } from '../../core/advice/turn-to-light.ts';
import { addDays, type Day } from '../../core/day/day.ts';
import { facesAfterUsualTurn } from '../../core/light/usual-turn.ts';
import { bloomNow } from '../condition/bloom-so-far.ts';
import { type FillSeen, fillAnswer } from '../condition/fill-answer.ts';
import { leafHistory } from '../condition/leaf-answer.ts';
import { plantCondition } from '../condition/plant-condition.ts';
import type { Bench, BenchView, PlantPage } from '../schemas/pages.ts';
import { inTurns } from '../season/in-turns.ts';
import { workOfPlant } from '../season/plant-season.ts';
import { type SeasonFacts, seasonFacts } from '../season/season-facts.ts';
import type { Database } from '../store/database.ts';
import { notesOfPlant } from '../store/notes.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { sittingCount } from '../store/sittings.ts';
import { stopsOfPlant } from '../store/stops.ts';
import { turnsOfPlant } from '../store/turns.ts';
import { viewById } from '../store/views.ts';
import { advisePlant, plantHistory } from './advise-plant.ts';
import { type AimedPlant, allAimedPlants } from './aimed-plant.ts';
import { benchView } from './bench-view.ts';
import { earlierSitting } from './earlier-sitting.ts';
import { plantAnswer } from './plant-answer.ts';
import { plantLight, plantLighting } from './plant-light.ts';
import { seenSittings } from './seen-sitting.ts';
import { trendsOf } from './trends.ts';
import { viewAnswer } from './view-answer.ts';

/** The bench tells the work of today and of the week to come. */
const WORK_AHEAD_DAYS = 7;
/** The bench draws and advises by the last half year of weekly sittings; a plant's page knows them all. */
const BENCH_SITTINGS = 26;

/**
 * Everything one plant's page shows, as of `today`.
 *
 * @param drawn how many of the newest sittings come whole; those before come in a line each. `null` for all
 */
export function plantPage(
  db: Database,
  plant: AimedPlant,
  today: Day,
  drawn: number | null = null,
): PlantPage {
  const facts = seasonFacts(db, today);
  // With every sitting whole a page is too large to be kept.
  const { fillSeen, ...page } =
    drawn === null
      ? reckonedPage(db, plant, facts, Number.MAX_SAFE_INTEGER)
      : rememberedPage(db, { plantId: plant.id, asked: [...facts.restsOn(plant), drawn] }, () =>
          reckonedPage(db, plant, facts, drawn),
        );
  // What other plants' photos tell is asked anew.
  return { ...page, fill: fillSeen && fillAnswer(db, facts, plant, fillSeen) };
}

/** Opening one plant after the other, a grower comes back to the last few. */
const PAGES_KEPT = 24;
type ReckonedPage = Omit<PlantPage, 'fill'> & { readonly fillSeen: FillSeen | null };
const rememberedPage = rememberingPlants<ReckonedPage>({ most: PAGES_KEPT });

function reckonedPage(db: Database, plant: AimedPlant, facts: SeasonFacts, whole: number): ReckonedPage {
  const { today } = facts;
  const { history, sittings, wholeSittings, stops, turns, trend, advice } = plantSoFar(db, plant, facts, {
    newest: null,
    drawn: whole,
  });
  return {
    plant: plantAnswer(plant),
    sittings: wholeSittings.slice(0, whole),
    earlier: sittings.slice(whole).map(earlierSitting),
    stops,
    notes: notesOfPlant(db, plant.id),
    turns,
    trend,
    advice,
    trends: trendsOf(
      trend,
      stops,
      sittings.flatMap(({ day, leftOut }) => (leftOut === null ? [] : [day])),
    ),
    light: plantLight(db, { plant, today }, history.lighting, nextTurnOf(history)),
    ...plantCondition(db, facts, plant, { sittings, history: history.sittings, stops }),
  };
}

const byName = new Intl.Collator('en');
const rememberedRow = rememberingPlants<Bench['plants'][number]>();

/** Every plant of the bench, the neediest first, then by name. */
export async function benchPage(db: Database, facts: () => SeasonFacts): Promise<Bench> {
  const rows = await inTurns(db, facts, (now, plant) =>
    rememberedRow(db, { plantId: plant.id, asked: now.restsOn(plant) }, () => benchRow(db, plant, now)),
  );
  const away = allAimedPlants(db, facts().today).filter(({ putAway }) => putAway);
  rows.sort((a, b) => need(b) - need(a) || byName.compare(a.plant.name, b.plant.name));
  return { plants: rows, putAway: away.map(plantAnswer) };
}

function benchRow(db: Database, plant: AimedPlant, facts: SeasonFacts): Bench['plants'][number] {
  const { today } = facts;
  const { sittings, trend, advice } = plantSoFar(db, plant, facts, { newest: BENCH_SITTINGS, drawn: 0 });
  return {
    plant: plantAnswer(plant),
    newest: newestAnswer(db, sittings[0]?.views[0]?.id ?? null),
    newestDay: sittings[0]?.day ?? null,
    sittingCount: sittingCount(db, plant.id),
    trend: trend.map(({ day, roundness, roundnessPlusMinus }) => ({ day, roundness, roundnessPlusMinus })),
    advice,
    isBloomUnderWay: bloomNow(db, facts, plant).isUnderWay,
    work: workOfPlant(db, facts, plant, { from: today, to: addDays(today, WORK_AHEAD_DAYS) }),
  };
}

/** The side that faces the light once the pot was turned as advised, or by its rhythm; `null` while its side to the light is not known. */
export function facesAfterTurn(db: Database, plant: AimedPlant, facts: SeasonFacts): number | null {
  const { history } = plantSoFar(db, plant, facts, { newest: BENCH_SITTINGS, drawn: 0 });
  const { ledger, rhythm } = history.lighting;
  return facesAfterUsualTurn({ ledger, next: nextTurnOf(history), rhythm });
}

/** The most urgent thing that a plant needs, 0 to 3. */
function need({ advice }: Bench['plants'][number]): number {
  return Math.max(0, ...advice.map(({ urgency }) => urgency));
}

/** What bench and page share: the plant's sittings and records, and what they say. */
function plantSoFar(
  db: Database,
  plant: AimedPlant,
  facts: SeasonFacts,
  { newest, drawn }: { readonly newest: number | null; readonly drawn: number },
) {
  const { today, notes } = facts;
  const knowledge = facts.knowledgeOf(plant.kind);
  const fullBloomSeen = bloomNow(db, facts, plant).bloom?.fullOn ?? null;
  const stops = stopsOfPlant(db, plant.id);
  const turns = turnsOfPlant(db, plant.id);
  const lighting = plantLighting(db, { plant, turns, today });
  const { all: sittings, whole: wholeSittings } = seenSittings(db, plant.id, {
    newest,
    drawn,
    today,
    light: lighting.place,
  });
  const leaf = leafHistory(sittings.toReversed(), notes.get(plant.id));
  const history = {
    ...plantHistory({ plant, sittings, stops, today, knowledge, fullBloomSeen }),
    lighting,
    leaf,
  };
  return { history, sittings, wholeSittings, stops, turns, ...advisePlant(history, sittings) };
}

/** The bench draws none of the parts. */
function newestAnswer(db: Database, viewId: string | null): BenchView | null {
  const view = viewId === null ? null : viewById(db, viewId);
  if (view === null) return null;
  return benchView(viewAnswer({ ...view, parts: null }));
}
