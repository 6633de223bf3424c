import { setImmediate } from 'node:timers/promises';
import type { Logger } from 'pino';
import type { Day } from '../../core/day/day.ts';
import { type AimedPlant, aimedPlant } from '../bench/aimed-plant.ts';
import type { BloomFit } from '../condition/bloom-fits.ts';
import { bloomSoFar, seenBloom } from '../condition/bloom-so-far.ts';
import { FitsMissing, fitsKept } from '../condition/fits.ts';
import type { Database } from '../store/database.ts';
import { keptFits } from '../store/kept-fits.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { type SeasonFacts, seasonFacts } from './season-facts.ts';
import { knownPlants } from './shared-facts.ts';

/** Fits blooms in a thread: after an upgrade none is kept, and those of a large bench take minutes. */
export interface BloomFitting {
  /** For answers on all plants: a bloom whose fit is not kept is under way. */
  facts(): SeasonFacts;
  /** Resolves when all that a plant's page tells of its bloom is kept. */
  forPage(plantId: string): Promise<void>;
  /** Resolves when all that work and plans of the plants on the bench follow from is kept. */
  forAll(): Promise<void>;
  close(): void;
}

export interface BloomFittingParts {
  readonly db: Database;
  readonly today: () => Day;
  readonly log: Logger;
  /** Reckons fits elsewhere; the answers in the same order. */
  readonly reckon: (fits: readonly BloomFit[]) => Promise<readonly unknown[]>;
  /** Hears of a plant whose bloom was under way and is known now, and perhaps others since the last time. */
  readonly tell: (plantId: string) => void;
}

/** So many go to the thread at once, so that a page that waits for one plant gets its turn. */
const AT_ONCE = 4;
/** Screens read everything anew when they hear of it. */
const TELL_EVERY_MS = 2_000;

export function createBloomFitting({ db, today, log, reckon, tell }: BloomFittingParts): BloomFitting {
  const { keep, settle } = keptFits(db);
  const came = new Map<string | null, number>();
  const rememberedMissing = rememberingPlants<readonly BloomFit[]>();
  const wanted = new Set<string>();
  let keptTimes = 0;
  let [isWorking, isClosed] = [false, false];
  let toldAtMs = Number.NEGATIVE_INFINITY;
  const fits = fitsKept(db, {
    cameFor: (plantId) => came.get(plantId) ?? 0,
    missing(plantId) {
      wanted.add(plantId);
      if (!isWorking) void work();
    },
  });
  const facts = () => seasonFacts(db, today(), fits);

  /** One plant after the other, until none is wanted. */
  async function work(): Promise<void> {
    isWorking = true;
    await setImmediate();
    for (const plantId of wanted) {
      const isThere = await fitted(plantId, seenBloom);
      wanted.delete(plantId);
      if (!isThere) continue;
      for (const of of [plantId, null]) came.set(of, (came.get(of) ?? 0) + 1);
      if (wanted.size > 0 && performance.now() - toldAtMs < TELL_EVERY_MS) continue;
      toldAtMs = performance.now();
      tell(plantId);
    }
    isWorking = false;
  }

  /** Whether all is kept that `ask` asks for; not, when the thread broke down or the store was closed. */
  async function fitted(plantId: string, ask: AskBloom): Promise<boolean> {
    try {
      while (!isClosed) {
        const missing = missingOf(plantId, ask).slice(0, AT_ONCE);
        if (missing.length === 0) return true;
        const answers = await reckon(missing);
        if (isClosed) break;
        for (const [at, { name, question }] of missing.entries()) keep(name, question, answers[at]);
        keptTimes++;
      }
    } catch (fault) {
      if (!isClosed) log.error({ err: fault, plantId }, 'a bloom could not be fitted');
    }
    return false;
  }

  /** Those that can be reckoned now: what is told of a bloom may hang on others. */
  function missingOf(plantId: string, ask: AskBloom): readonly BloomFit[] {
    const plant = aimedPlant(db, plantId, today());
    if (plant === null) return [];
    try {
      ask(facts(), plant);
      return [];
    } catch (fault) {
      if (fault instanceof FitsMissing) return fault.fits;
      throw fault;
    }
  }

  return {
    facts,
    async forPage(plantId) {
      const plant = aimedPlant(db, plantId, today());
      if (plant === null) return;
      const asked = [...facts().restsOn(plant), keptTimes];
      // Asking for all that is kept takes as long as half a page.
      const missing = rememberedMissing(db, { plantId, asked }, () => missingOf(plantId, askAll));
      if (missing.length > 0) await fitted(plantId, askAll);
    },
    async forAll() {
      for (const { id } of knownPlants(db).filter(({ putAway }) => !putAway)) await fitted(id, seenBloom);
    },
    close() {
      isClosed = true;
      wanted.clear();
      settle();
    },
  };
}

/** Asks for what is told of a bloom; throws where a fit is missing. */
type AskBloom = (facts: SeasonFacts, plant: AimedPlant) => unknown;

function askAll(facts: SeasonFacts, plant: AimedPlant): void {
  const { curve, forRecords } = bloomSoFar(facts, plant);
  curve();
  forRecords();
}
