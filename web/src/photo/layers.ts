import { createKeptStore } from '../parts/store.ts';

export const LAYERS = ['ball', 'outline', 'cuts', 'weak', 'axis'] as const;
export type Layer = (typeof LAYERS)[number];

export const LAYER_WORDS: Record<Layer, string> = {
  ball: 'Ball',
  outline: 'Outline',
  cuts: 'Cut marks',
  weak: 'Weak side',
  axis: 'Axis and rim',
};

/** Which layers the grower wants to see; kept on this device. */
export const shownLayers = createKeptStore<readonly Layer[]>(
  'rondure.layers',
  LAYERS,
  (kept): kept is readonly Layer[] => Array.isArray(kept) && kept.every((name) => LAYERS.includes(name)),
);

export function switchLayer(layer: Layer): void {
  const shown = shownLayers.read();
  shownLayers.write(shown.includes(layer) ? shown.filter((one) => one !== layer) : [...shown, layer]);
}
