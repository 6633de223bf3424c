/** The words printed with the turn collar: read once, with scissors in the hand. */
export interface CollarWords {
  readonly name: string;
  readonly title: string;
  readonly rim: string;
  readonly steps: readonly string[];
  readonly mark: string;
  readonly tab: string;
  readonly checkLine: string;
}

export const COLLAR_WORDS: CollarWords = {
  name: 'Rondure',
  title: 'Turn collar',
  rim: 'for a rim of {rim} mm across',
  steps: [
    'Print at actual size (100 %) on plain white, matt paper. Lay a ruler on the line below: not 100 mm? Print again.',
    'Cut along the outer lines. Glue each piece over the tab of the one before it, edge to line.',
    'Wrap it round the pot just below the rim, hours at the bottom, the long tick at the pot’s mark. Close it at the back.',
    'The ends should meet at the line. If they miss it by more than 4 mm, measure the rim again and print a new one.',
  ],
  mark: 'mark (6 o’clock)',
  tab: 'glue',
  checkLine: '100 mm',
};
