import { createKeptStore } from '../parts/store.ts';

export const LAYERS = ['ball', 'outline', 'unsure', 'cuts', 'weak', 'axis', 'parts'] as const;
export type Layer = (typeof LAYERS)[number];

export const LAYER_WORDS: Record<Layer, string> = {
  ball: 'Ball',
  outline: 'Outline',
  unsure: 'Unsure zones',
  cuts: 'Cut marks',
  weak: 'Weak side',
  axis: 'Axis and rim',
  parts: 'Parts',
};

/** The parts would bury the answer: they are drawn only when asked for. */
const FIRST_SHOWN = LAYERS.filter((layer) => layer !== 'parts');

/** Which layers the grower wants to see; kept on this device. */
export const shownLayers = createKeptStore<readonly Layer[]>(
  'rondure.shown-layers',
  FIRST_SHOWN,
  (kept): kept is readonly Layer[] => Array.isArray(kept) && kept.every((name) => LAYERS.includes(name)),
);

export function switchLayer(layer: Layer): void {
  const shown = shownLayers.read();
  shownLayers.write(shown.includes(layer) ? shown.filter((one) => one !== layer) : [...shown, layer]);
}
