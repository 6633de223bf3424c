/** The words printed on the stand sheet. Short: they are read once, with the sheet and a ruler in the hand. */
export interface SheetWords {
  readonly name: string;
  readonly title: string;
  readonly steps: readonly string[];
  readonly light: string;
  readonly checkLine: string;
  readonly greys: string;
}

export const SHEET_WORDS: SheetWords = {
  name: 'Rondure',
  title: 'Stand sheet',
  steps: [
    'Print at actual size (100 %), on plain white, matt paper.',
    'Lay a ruler on the line below. Not 100 mm? Print again.',
    'Fix it flat on the backdrop, beside or above the plant,',
    'or flat on the bench. Keep the rings in sight.',
    'Let the arrow point to the side the light comes from.',
    'Then leave it where it is, week after week.',
  ],
  light: 'light',
  checkLine: '100 mm',
  greys: 'Greys: nominal, depends on the printer',
};
