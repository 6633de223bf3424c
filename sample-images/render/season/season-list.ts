import { weeksAfter } from './calendar.ts';
import type { PlantSeason, SampleShow } from './season-spec.ts';
import { emptyFile, photoFile, turnsOf } from './write-plant.ts';

const ABOUT =
  'A made-up season of five plants, rendered with known truth. Names, varieties, shows and days are invented. ' +
  'Files lie under this folder; beside each NAME.jpg are NAME.canopy.png and NAME.truth.json.';

/** The season as a grower would have written it down, with the files of each sitting. */
export function seasonList(
  seasons: readonly PlantSeason[],
  shows: readonly SampleShow[],
): Record<string, unknown> {
  return {
    about: ABOUT,
    shows,
    plants: seasons.map((season) => ({
      key: season.key,
      name: season.name,
      kind: season.kind,
      variety: season.variety,
      rimMm: season.pot.rimMm,
      showDay: season.showDay,
      empty: emptyFile(season),
      sittings: Array.from({ length: season.sittings }, (_, week) => ({
        day: weeksAfter(season.firstDay, week),
        views: turnsOf(season, week).map((turnDeg) => ({ file: photoFile(season, week, turnDeg), turnDeg })),
      })),
      stops: season.stops,
      notes: season.notes,
      turns: season.turns,
    })),
  };
}
