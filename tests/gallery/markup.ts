const ENTITIES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Words as they may stand between tags and in attributes. */
export function escaped(words: string): string {
  return words.replace(/[&<>"]/g, (letter) => ENTITIES[letter] as string);
}

/** A length or place in a drawing, to a tenth of a px; throws on what cannot be drawn. */
export function px(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`Expected a finite number of px but received ${value}`);
  return String(Math.round(value * 10) / 10);
}

/** The four attributes of an upright box. */
export function boxAttributes(box: { x: number; y: number; width: number; height: number }): string {
  return `x="${px(box.x)}" y="${px(box.y)}" width="${px(box.width)}" height="${px(box.height)}"`;
}
