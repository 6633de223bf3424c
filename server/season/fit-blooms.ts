import { setImmediate } from 'node:timers/promises';
import type { Day } from '../../core/day/day.ts';
import { allAimedPlants } from '../bench/aimed-plant.ts';
import { seenBloom } from '../condition/bloom-so-far.ts';
import type { Database } from '../store/database.ts';
import { seasonFacts } from './season-facts.ts';

/** A plant that took longer was fitted just now, not remembered. */
const REMEMBERED_MS = 10;

/**
 * Fits the blooms that an answer on all plants asks for, and gives other requests their turn between two plants: after an upgrade none is kept, and a
 * large bench takes minutes.
 */
export async function fitBlooms(db: Database, today: Day): Promise<void> {
  const facts = seasonFacts(db, today);
  for (const plant of allAimedPlants(db, today)) {
    const begun = performance.now();
    seenBloom(facts, plant);
    if (performance.now() - begun > REMEMBERED_MS) await setImmediate();
  }
}
