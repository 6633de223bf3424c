import type { Day } from '../day/day.ts';

/** A show, with the rules as the grower copied them from its schedule. */
export interface Show {
  readonly id: string;
  readonly name: string;
  readonly day: Day;
  /** In words; may be empty. */
  readonly place: string;
  readonly rules: string;
  readonly classes: readonly ShowClass[];
}

/** A class of a show; a limit that it does not have is `null`. */
export interface ShowClass {
  readonly id: string;
  readonly name: string;
  /** Widest pot, rim diameter. */
  readonly potMm: number | null;
  readonly widestMm: number | null;
  readonly tallestMm: number | null;
  readonly rules: string;
}

/** A plant entered for a show, and for a class where that is settled. */
export interface Entry {
  readonly plantId: string;
  readonly showId: string;
  readonly classId: string | null;
}
