import { readFile } from 'node:fs/promises';
import { type Network, openNetwork } from '../../core/canopy/model/onnx-door.ts';

/** The trained network, or why it is done without. */
export interface NetworkAtHand {
  readonly network: Network | null;
  /** Sentence for the report's `notes`. */
  readonly note: string | null;
}

const WEIGHTS = new URL('../../core/canopy/model/first-guess.onnx', import.meta.url);

const LEFT_OUT: NetworkAtHand = {
  network: null,
  note: 'Measured without the trained network, as was asked for.',
};

/** Opened once a thread: it takes some 0.3 s and 60 MB. */
let opened: Promise<NetworkAtHand> | null = null;

/** The network for measuring. A fault in loading it is told in the note, and measuring goes on without. */
export function networkAtHand(wanted: boolean): Promise<NetworkAtHand> {
  if (!wanted) return Promise.resolve(LEFT_OUT);
  opened ??= loadNetwork(WEIGHTS);
  return opened;
}

export async function loadNetwork(weights: URL): Promise<NetworkAtHand> {
  try {
    return { network: await openNetwork(await readFile(weights)), note: null };
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    return {
      network: null,
      note: `Measured without the trained network, which could not be loaded. Install Rondure anew to have it back. (${why})`,
    };
  }
}
