import type { Day } from '../../core/day/day.ts';
import { lightLedger } from '../../core/light/light-ledger.ts';
import { lightFromCameraDeg } from '../../core/light/light-side.ts';
import type { PlantLight, Turn } from '../schemas/light.ts';
import type { Database } from '../store/database.ts';
import type { PlantRow } from '../store/plants.ts';
import { versionOn } from '../store/stand-versions.ts';
import { standById } from '../store/stands.ts';

/** The light of one plant, as of `today`. */
export function plantLight(
  db: Database,
  { plant, turns, today }: { readonly plant: PlantRow; readonly turns: readonly Turn[]; readonly today: Day },
): PlantLight {
  const stand = plant.standId === null ? null : standById(db, plant.standId);
  const version = stand === null ? null : versionOn(db, stand.id, today);
  return {
    fromCameraDeg: lightFromCameraDeg(version?.lightSide ?? null),
    ledger: lightLedger(turns.toReversed(), today),
    next: null,
    season: null,
  };
}
