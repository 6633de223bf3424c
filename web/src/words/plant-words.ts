import type { PlantKind } from '../../../core/plant.ts';

export const KIND_WORDS: Record<PlantKind, string> = {
  regal: 'Regal pelargonium',
  angel: 'Angel pelargonium',
  zonal: 'Zonal pelargonium',
  'ivy-leaved': 'Ivy-leaved pelargonium',
  dwarf: 'Dwarf or miniature pelargonium',
  'fuchsia-single': 'Fuchsia, single',
  'fuchsia-semi-double': 'Fuchsia, semi-double',
  'fuchsia-double': 'Fuchsia, double',
  other: 'Another kind',
};

/** "Regal pelargonium, Dark Lantern"; the variety is left out when it is not given. */
export function kindAndVariety(plant: { kind: PlantKind; variety: string }): string {
  return plant.variety ? `${KIND_WORDS[plant.kind]}, ${plant.variety}` : KIND_WORDS[plant.kind];
}

export const STOP_WORDS = { tip: 'Tip stop', deep: 'Deep stop' } as const;
export const STOP_MEANINGS = {
  tip: 'Takes out the growing tip only.',
  deep: 'Takes the stem further back.',
} as const;

/** "2 o’clock" in the photo: 12 on top, 3 at the right. */
export function clockWords(clock: number): string {
  return `${clock} o’clock`;
}

/** "3 photos", "1 photo". */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
