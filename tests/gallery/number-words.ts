/** The numbers of a report that stand first, in this order, with the names a grower knows. */
export const NUMBER_NAMES: Record<string, string> = {
  'roundness.score': 'Roundness',
  'symmetry.score': 'Symmetry',
  'lopsidedness.percent': 'Lopsidedness',
  'ball.radiusMm': 'Ball radius',
  'ball.radiusPx': 'Ball radius',
  'ball.outOfRoundMm': 'Out of round',
  'ball.outOfRoundPx': 'Out of round',
  'ball.openArcDeg': 'Open arc',
  'canopy.widthMm': 'Canopy width',
  'canopy.heightMm': 'Canopy height',
  'canopy.widthPx': 'Canopy width',
  'canopy.heightPx': 'Canopy height',
  'canopy.areaPx': 'Canopy area',
  'canopy.solidity': 'Solidity',
  'canopy.gapFraction': 'Gap fraction',
  'canopy.flowerShare': 'Flower share',
  'scale.mmPerPx': 'Scale',
  confidence: 'Overlap to be expected',
};

/** The name of a number: the grower's, else its path in the report in words. */
export function nameOf(path: string): string {
  const known = NUMBER_NAMES[path];
  if (known !== undefined) return known;
  const words = path
    .replace(/(Px|Mm|Deg)(?=\.|$)/g, '')
    .replace(/\.0$/, ' x')
    .replace(/\.1$/, ' y')
    .replace(/\./g, ' ')
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The unit by the name of the number in the report; '' for a share, a score or a factor. */
export function unitOf(path: string): string {
  const leaf = path.replace(/\.\d+$/, '');
  if (leaf.endsWith('mmPerPx')) return 'mm/px';
  if (leaf.endsWith('areaPx')) return 'px²';
  if (leaf.endsWith('Px')) return 'px';
  if (leaf.endsWith('Mm')) return 'mm';
  if (leaf.endsWith('Deg')) return '°';
  return leaf.endsWith('percent') ? '%' : '';
}

/** Digits after the point: a tenth for scores and lengths, more where the whole number is small. */
export function digitsOf(path: string): number {
  if (path === 'scale.mmPerPx') return 4;
  if (path === 'canopy.areaPx' || path === 'widthPx' || path === 'heightPx') return 0;
  return unitOf(path) === '' && !/score|Symmetry$/.test(path) ? 3 : 1;
}

/** A number as the page shows it, with a true minus sign. */
export function shown(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`Expected a finite number to show but received ${value}`);
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** The same with its sign, for a difference. */
export function shownDifference(value: number, digits: number): string {
  const text = shown(value, digits);
  return Number(text) > 0 ? `+${text}` : text;
}
