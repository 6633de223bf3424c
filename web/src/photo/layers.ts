import type { Advice } from '../../../core/advice/advice.ts';
import { createKeptStore } from '../parts/store.ts';

export const LAYERS = [
  'ball',
  'outline',
  'unsure',
  'cuts',
  'weak',
  'yellow',
  'thin',
  'axis',
  'parts',
] as const;
export type Layer = (typeof LAYERS)[number];

export const LAYER_WORDS: Record<Layer, string> = {
  ball: 'Ball',
  outline: 'Outline',
  unsure: 'Unsure zones',
  cuts: 'Cut marks',
  weak: 'Weak side',
  yellow: 'Yellow leaf',
  thin: 'Thin places',
  axis: 'Axis and rim',
  parts: 'Parts',
};

/** These would bury the answer: they are drawn only when asked for, or when the advice speaks of them. */
const ON_ASKING: readonly Layer[] = ['yellow', 'thin', 'parts'];

/** What the grower switched on or off; the rest is as it comes. */
export type LayerChoices = Readonly<Partial<Record<Layer, boolean>>>;

/** The grower's own switching; kept on this device. */
export const layerChoices = createKeptStore<LayerChoices>(
  'rondure.layer-choices',
  {},
  (kept): kept is LayerChoices => typeof kept === 'object' && kept !== null && !Array.isArray(kept),
);

/** The layers to be drawn: what was switched on, and of the rest what comes by itself or is spoken of. */
export function layersShown(choices: LayerChoices, spokenOf: readonly Layer[] = []): readonly Layer[] {
  return LAYERS.filter((layer) => choices[layer] ?? (!ON_ASKING.includes(layer) || spokenOf.includes(layer)));
}

/** Layers that advice on the newest sitting speaks of. */
export function layersSpokenOf(advice: readonly Pick<Advice, 'kind'>[]): readonly Layer[] {
  return advice.some(({ kind }) => kind === 'clear') ? ['yellow'] : [];
}

export function switchLayer(layer: Layer, isOn: boolean): void {
  layerChoices.write({ ...layerChoices.read(), [layer]: isOn });
}
