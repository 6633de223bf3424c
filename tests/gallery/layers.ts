/** All that the gallery draws on a photo, from the bottom up. */
export const LAYERS = {
  outline: 'Outline',
  truth: 'True outline and long tips',
  form: 'Form profile',
  zone: 'Minimum-zone circles',
  ball: 'Ball',
  axis: 'Axis and rim ends',
  rim: 'Rim ellipse',
  pot: 'Pot',
  soil: 'Soil',
  support: 'Label or support',
  flower: 'Flower',
  weak: 'Weak side',
  unsure: 'Unsure zones',
  cuts: 'Long stems and cut marks',
} as const;
export type Layer = keyof typeof LAYERS;

/** A layer's drawing as one group that says what it is; nothing for an empty drawing. */
export function layerGroup(layer: Layer, words: string, drawing: string): string {
  return drawing === '' ? '' : `<g data-layer="${layer}"><title>${words}</title>${drawing}</g>`;
}
