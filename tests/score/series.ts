import type { FoundPlant, NoPlant } from '../../core/canopy/found-plant.ts';
import type { LastOutline } from '../../core/canopy/last-outline.ts';
import { type LearnedColours, learnColours } from '../../core/canopy/learned-colours.ts';
import type { Folder, Pair } from './folders.ts';
import type { Scene } from './scene.ts';

const DAY = /\d{4}-\d{2}-\d{2}/;
const TURN = /[-_](turn|sv)\d+/;
const DAY_MS = 86_400_000;

/** What is known from a plant's earlier photos. */
export interface History {
  readonly colours: LearnedColours | null;
  readonly lastOutline: LastOutline | null;
}

/** Remembers earlier photos of the plants of one folder, told by the days in the photos' names. */
export interface Series {
  /** What the photos before this one taught; `null` when there was none. */
  before(pair: Pair): History | null;
  /** Takes the wanted canopy as the outline that the grower accepted. */
  accept(scene: Scene, found: FoundPlant | NoPlant): void;
}

/** The folder's photos by day, those without a day as they come. */
export function byDay({ pairs }: Folder): Pair[] {
  const day = (pair: Pair) => DAY.exec(pair.name)?.[0] ?? '';
  return [...pairs].sort((one, other) => day(one).localeCompare(day(other)));
}

export function openSeries(): Series {
  const colours = new Map<string, LearnedColours | null>();
  const outlines = new Map<string, { outline: LastOutline; dayMs: number }>();
  return {
    before({ name }) {
      const { plant, view, dayMs } = keysOf(name);
      if (dayMs === null || !colours.has(plant)) return null;
      const last = outlines.get(view);
      const days = last === undefined ? 0 : Math.round((dayMs - last.dayMs) / DAY_MS);
      return {
        colours: colours.get(plant) ?? null,
        lastOutline: last === undefined || days <= 0 ? null : { ...last.outline, days },
      };
    },
    accept({ pair, raster, wanted }, found) {
      const { plant, view, dayMs } = keysOf(pair.name);
      if (dayMs === null) return;
      const known = found.ok ? { parts: found.parts } : {};
      colours.set(plant, learnColours(colours.get(plant) ?? null, raster, wanted, known));
      const pot = found.ok ? found.pot : null;
      outlines.set(view, { outline: { canopy: wanted, pot, days: 0 }, dayMs });
    },
  };
}

/** The name without day and turn tells the plant, with its turn the view of it. */
function keysOf(name: string): { plant: string; view: string; dayMs: number | null } {
  const day = DAY.exec(name)?.[0];
  const view = name.replace(DAY, '');
  return { plant: view.replace(TURN, ''), view, dayMs: day === undefined ? null : Date.parse(day) };
}
