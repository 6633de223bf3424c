import type { Day } from '../../../core/day/day.ts';
import type { KeptPhoto } from '../kept/kept-database.ts';
import { createStore } from '../parts/store.ts';

/** One chosen photo on its way. */
export interface Sending extends Omit<KeptPhoto, 'chosenOn' | 'trouble'> {
  readonly chosenOn: Day;
  /** `device`: it outlives this page. `page`: the browser keeps nothing, so closing the page would lose it. */
  readonly heldBy: 'device' | 'page';
  readonly stage: SendingStage;
}

export type SendingStage =
  | { readonly at: 'keeping' }
  | { readonly at: 'waiting' }
  | { readonly at: 'sending'; readonly share: number }
  | { readonly at: 'kept'; readonly viewId: string }
  | { readonly at: 'known'; readonly detail: string; readonly viewId: string; readonly plantId: string }
  | { readonly at: 'refused'; readonly detail: string }
  /** `byItself`: it is tried again without being asked. */
  | { readonly at: 'failed'; readonly detail: string; readonly byItself: boolean };

/** Every photo on its way in this page, those of earlier visits first. */
export const sendings = createStore<readonly Sending[]>([]);

/** Why the browser does not keep photos, in words; `null` while it does. */
export const notKeeping = createStore<string | null>(null);

/** Whether the server has not got the photo yet. */
export function isUnsent({ stage }: Sending): boolean {
  return stage.at !== 'kept' && stage.at !== 'known';
}

export function sendingOf(key: string): Sending | undefined {
  return sendings.read().find((one) => one.key === key);
}

export function changeSending(key: string, change: Partial<Sending>): void {
  sendings.write(sendings.read().map((one) => (one.key === key ? { ...one, ...change } : one)));
}

export function moveSending(key: string, stage: SendingStage): void {
  changeSending(key, { stage });
}

export function forgetSending(key: string): void {
  sendings.write(sendings.read().filter((one) => one.key !== key));
}

/** Takes what the server has off the list; what waits, moves, failed or was refused stays. */
export function clearSettled(plantId: string): void {
  sendings.write(sendings.read().filter((one) => one.plantId !== plantId || isUnsent(one)));
}

/** The photos that the server has of those sent. */
export function viewIdsOf(sent: readonly Sending[]): string[] {
  return sent.flatMap(({ stage }) => ('viewId' in stage ? [stage.viewId] : []));
}
