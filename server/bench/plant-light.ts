import type { PlantLighting } from '../../core/advice/plant-history.ts';
import { addDays, type Day } from '../../core/day/day.ts';
import { lightLedger } from '../../core/light/light-ledger.ts';
import { lightFromCameraDeg, seasonOfLight, WINDOW_HALF_WIDTH_DEG } from '../../core/light/light-side.ts';
import type { NextTurn } from '../../core/light/next-turn.ts';
import { wholeTurn } from '../../core/turned/circular-statistics.ts';
import type { PlantLight, Turn } from '../schemas/light.ts';
import type { Database } from '../store/database.ts';
import type { PlantRow } from '../store/plants.ts';
import { versionOn } from '../store/stand-versions.ts';
import { type StandRow, standById } from '../store/stands.ts';

/** What is known of a plant's light as of `today`, on the stand where it stands now. */
export function plantLighting(
  db: Database,
  { plant, turns, today }: { readonly plant: PlantRow; readonly turns: readonly Turn[]; readonly today: Day },
): PlantLighting {
  const side = plant.standId === null ? null : versionOn(db, plant.standId, today).lightSide;
  const fromCameraDeg = lightFromCameraDeg(side);
  // Written down last counts last: the ledger wants the oldest first.
  const ledger = lightLedger(turns.toReversed(), today);
  const faces = ledger.nowFacesDeg;
  return {
    place:
      fromCameraDeg === null
        ? null
        : { fromCameraDeg, standsAtTurnDeg: faces === null ? null : wholeTurn(faces - fromCameraDeg) },
    ledger,
    rhythm: plant.turnRhythm,
  };
}

/** The light of one plant as its page shows it. */
export function plantLight(
  db: Database,
  { plant, today }: { readonly plant: PlantRow; readonly today: Day },
  { place, ledger }: PlantLighting,
  next: NextTurn | null,
): PlantLight {
  const stand = plant.standId === null ? null : standById(db, plant.standId);
  return {
    fromCameraDeg: place?.fromCameraDeg ?? null,
    ledger,
    next,
    season: stand === null ? null : seasonOn(stand, today),
  };
}

/** A year from today, every two weeks. */
const SEASON_STEPS = 26;
const STEP_DAYS = 14;

function seasonOn({ latitudeDeg, lightBearingDeg }: StandRow, today: Day): PlantLight['season'] {
  if (latitudeDeg === null) return null;
  const opening =
    lightBearingDeg === null ? null : { bearingDeg: lightBearingDeg, halfWidthDeg: WINDOW_HALF_WIDTH_DEG };
  const days = Array.from({ length: SEASON_STEPS + 1 }, (_, step) => addDays(today, step * STEP_DAYS));
  return seasonOfLight({ latitudeDeg, opening }, days);
}
