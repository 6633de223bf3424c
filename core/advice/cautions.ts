import type { PlantKind } from '../plant.ts';

const KNIFE =
  'Use a clean, sharp blade, cut away from your hand, and stop when tired or cold-handed. Wear gloves if sap troubles your skin. A cut cannot be undone: when in doubt take less.';

/**
 * Words that stand beside every advice to cut.
 *
 * Reference: pelargoniums and pets: ASPCA as relayed by veterinary pages; skin: Rademaker (1999), DermNet; dry plants:
 * pelargonium society advice, relayed; dry air after cutting: Hausbeck and Pennypacker (1991), Plant Disease
 * 75:1168. That fuchsias snap most cleanly when full of water is hobby practice.
 */
export function cuttingCaution(kind: PlantKind): string {
  switch (kind) {
    case 'regal':
    case 'angel':
    case 'zonal':
    case 'ivy-leaved':
    case 'dwarf':
      return `${KNIFE} Keep cuttings from cats and dogs: pelargoniums can make them ill. Let the pot dry before a hard cut, and keep the fresh cuts in dry, moving air for at least a day.`;
    case 'fuchsia-single':
    case 'fuchsia-semi-double':
    case 'fuchsia-double':
      return `${KNIFE} Soft tips snap most cleanly when the plant was watered the evening before.`;
    case 'other':
      return `${KNIFE} Find out first whether the sap of this plant is harmful to people or pets.`;
  }
}
