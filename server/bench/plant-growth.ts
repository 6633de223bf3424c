import type { SittingReports } from '../../core/advice/plant-history.ts';
import { addDays, type Day } from '../../core/day/day.ts';
import { forecastRadius } from '../../core/growth/forecast-radius.ts';
import {
  type Growth,
  type GrowthRequest,
  growthLessons,
  growthOf,
  type NoGrowth,
} from '../../core/growth/growth.ts';
import { type RadiusReading, radiusReadings } from '../../core/growth/radius-readings.ts';
import type { PlantGrowth } from '../schemas/cuts.ts';
import type { Database } from '../store/database.ts';
import { allPlants, type PlantRow } from '../store/plants.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { stopsOfPlant } from '../store/stops.ts';
import type { AimedPlant } from './aimed-plant.ts';
import { remembering } from './remembering.ts';
import { briefSittings, type SeenSitting } from './seen-sitting.ts';

const DAYS_A_WEEK = 7;
/** Weeks foretold where no show is set. */
const WEEKS_AHEAD = 12;
/** Nobody plans a plant's size farther ahead than from one season's first stop to its show. */
const MOST_WEEKS_AHEAD = 40;

/** How a plant's ball has grown, and the same as the screen gets it; `told` is `null` when no curve can be told. */
export interface GrowthSoFar {
  readonly growth: Growth | NoGrowth;
  readonly told: PlantGrowth | null;
}

/** How a plant's ball has grown up to `today`, with what other plants of its variety teach, foretold week by week. */
export function plantGrowth(db: Database, plant: AimedPlant, today: Day): GrowthSoFar {
  return growthSoFar({
    ...radiiOf(db, plant),
    today,
    showDay: plant.showDay,
    varietyLessons: varietyLessons(db, plant),
  });
}

/** Fitting takes a tenth of a second, and every tick on the list asks for it again. */
const growthSoFar = remembering(
  ({ showDay, ...request }: GrowthRequest & { readonly showDay: Day | null }): GrowthSoFar => {
    const growth = growthOf(request);
    return { growth, told: growth.ok ? toldGrowth(growth, { today: request.today, showDay }) : null };
  },
  50,
);

const lessonsOf = remembering(growthLessons, 200);

function toldGrowth(growth: Growth, { today, showDay }: { today: Day; showDay: Day | null }): PlantGrowth {
  const { since, begunBy, sittings, restsOn, words, why, sureness, notes } = growth;
  return {
    since,
    begunBy,
    sittings,
    restsOn,
    words,
    why,
    sureness,
    notes,
    forecast: forecastDays(today, showDay).map((day) => forecastRadius(growth, day)),
  };
}

/** Today, then week by week; the last is the day of the show. */
function forecastDays(today: Day, showDay: Day | null): Day[] {
  const last = addDays(today, DAYS_A_WEEK * (showDay === null ? WEEKS_AHEAD : MOST_WEEKS_AHEAD));
  const end = showDay !== null && showDay >= today && showDay < last ? showDay : last;
  const days: Day[] = [];
  for (let day = today; day < end; day = addDays(day, DAYS_A_WEEK)) days.push(day);
  return [...days, end];
}

const rememberedReadings = rememberingPlants<readonly RadiusReading[]>();

function radiiOf(db: Database, { id }: PlantRow) {
  return {
    readings: rememberedReadings(db, { plantId: id, asked: [] }, () =>
      radiusReadings(sittingsOf(briefSittings(db, id))),
    ),
    stops: stopsOfPlant(db, id).map(({ day }) => day),
  };
}

/** The reports of each day that may be compared with other days'. */
function sittingsOf(sittings: readonly SeenSitting[]): SittingReports[] {
  return sittings.flatMap(({ day, views }) => {
    const reports = views.flatMap(({ report, afterWork }) =>
      report === null || report.notCompared !== null || afterWork ? [] : [report],
    );
    return reports.length === 0 ? [] : [{ day, reports }];
  });
}

/** What the other plants of the same kind and variety teach; the sample bench and the grower's own teach only themselves. */
function varietyLessons(db: Database, plant: PlantRow) {
  const variety = nameOf(plant);
  if (variety === '') return [];
  return allPlants(db)
    .filter(({ id, kind, sample }) => id !== plant.id && kind === plant.kind && sample === plant.sample)
    .filter((other) => nameOf(other) === variety)
    .map((other) => lessonsOf(radiiOf(db, other)));
}

function nameOf({ variety }: PlantRow): string {
  return variety.trim().toLowerCase();
}
