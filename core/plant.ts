/** Kinds of plant as the trade names them. */
export const PLANT_KINDS = [
  'regal',
  'angel',
  'zonal',
  'ivy-leaved',
  'dwarf',
  'fuchsia-single',
  'fuchsia-semi-double',
  'fuchsia-double',
  'other',
] as const;
export type PlantKind = (typeof PLANT_KINDS)[number];
