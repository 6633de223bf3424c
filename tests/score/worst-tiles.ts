import { type Shown, tileOf, writeTiles } from './sheet.ts';

/** Keeps the pictures of the worst photos met so far; the others' are let go. */
export interface WorstTiles {
  offer(iou: number, shown: Shown): Promise<void>;
  write(file: string): Promise<void>;
}

export function keepWorst(most: number): WorstTiles {
  let kept: { iou: number; tile: Buffer }[] = [];
  return {
    async offer(iou, shown) {
      if (kept.length >= most && iou >= (kept.at(-1)?.iou ?? 0)) return;
      kept = [...kept, { iou, tile: await tileOf(shown) }].sort((one, other) => one.iou - other.iou);
      kept = kept.slice(0, most);
    },
    write: (file) =>
      writeTiles(
        file,
        kept.map(({ tile }) => tile),
      ),
  };
}
