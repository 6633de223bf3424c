import { WORK_KINDS } from '../../../../core/season/work.ts';
import type { Piece } from '../../api/work-words.ts';
import type { BenchRow } from '../need-groups.ts';
import { isWantedNow } from './is-wanted-now.ts';

/** A piece of work with the name of its plant. */
export interface NamedPiece extends Piece {
  readonly plantName: string;
}

/** The same work on one plant or many. */
export interface WorkGroup {
  readonly key: string;
  readonly kind: Piece['kind'];
  readonly what: string;
  readonly cautions: readonly string[];
  /** By day, then by name. */
  readonly pieces: readonly NamedPiece[];
}

/** The work of a bench, parted by when it is wanted. */
export interface BenchWork {
  readonly today: readonly WorkGroup[];
  readonly thisWeek: readonly WorkGroup[];
  /** Done or skipped. */
  readonly settled: readonly NamedPiece[];
}

/**
 * Work of all plants as one list, the same work together.
 *
 * Notes: work that has lapsed is left out. There is nothing to make up.
 */
export function benchWork(rows: readonly BenchRow[]): BenchWork {
  const pieces = rows.flatMap(({ plant, work }) => work.map((one) => ({ ...one, plantName: plant.name })));
  return {
    today: grouped(pieces.filter(isWantedNow)),
    thisWeek: grouped(pieces.filter(({ state }) => state === 'to-come')),
    settled: pieces.filter(({ state }) => state === 'done' || state === 'skipped'),
  };
}

/** How many plants a list of work is on. */
export function plantsIn(groups: readonly WorkGroup[]): number {
  return new Set(groups.flatMap(({ pieces }) => pieces.map(({ plantId }) => plantId))).size;
}

function grouped(pieces: readonly NamedPiece[]): WorkGroup[] {
  const found = new Map<string, NamedPiece[]>();
  for (const piece of pieces) {
    const key = `${piece.kind} ${piece.what}`;
    const together = found.get(key);
    if (together) together.push(piece);
    else found.set(key, [piece]);
  }
  return [...found]
    .map(([key, together]) => ({
      key,
      kind: (together[0] as NamedPiece).kind,
      what: (together[0] as NamedPiece).what,
      cautions: [...new Set(together.map(({ caution }) => caution).filter((words) => words !== null))],
      pieces: together.sort(byDayThenName),
    }))
    .sort(byKind);
}

/** What the plant suffers from most when it is left comes first: the order in which the kinds are listed. */
function byKind(one: WorkGroup, other: WorkGroup): number {
  return WORK_KINDS.indexOf(one.kind) - WORK_KINDS.indexOf(other.kind) || (one.what < other.what ? -1 : 1);
}

function byDayThenName(one: NamedPiece, other: NamedPiece): number {
  if (one.day !== other.day) return one.day < other.day ? -1 : 1;
  return one.plantName.localeCompare(other.plantName);
}
