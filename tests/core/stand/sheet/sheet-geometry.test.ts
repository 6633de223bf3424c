import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { RING_EDGES, RING_UNIT_MM } from '../../../../core/stand/sheet/ring-kinds.ts';
import { type SheetShape, sheetDrawing } from '../../../../core/stand/sheet/sheet-drawing.ts';
import { SHEET_MARGIN_MM, sheetGeometry } from '../../../../core/stand/sheet/sheet-geometry.ts';
import { sheetSvg } from '../../../../core/stand/sheet/sheet-svg.ts';

/** Left, top, right, bottom, mm; writing is taken to be 0.52 of its height wide a letter, broader than the faces named and their stand-ins. */
function boundsOf(shape: SheetShape): [number, number, number, number] {
  switch (shape.kind) {
    case 'circle': {
      const [x, y] = shape.centreMm;
      return [x - shape.radiusMm, y - shape.radiusMm, x + shape.radiusMm, y + shape.radiusMm];
    }
    case 'rect':
      return [shape.leftMm, shape.topMm, shape.leftMm + shape.widthMm, shape.topMm + shape.heightMm];
    case 'text': {
      const width = 0.52 * shape.sizeMm * shape.words.length;
      const left = shape.atMm[0] - (shape.anchor === 'middle' ? width / 2 : 0);
      return [left, shape.atMm[1] - 0.8 * shape.sizeMm, left + width, shape.atMm[1] + 0.25 * shape.sizeMm];
    }
    default: {
      const half = shape.kind === 'line' ? shape.widthMm / 2 : 0;
      const [xs, ys] = [shape.pointsMm.map(([x]) => x), shape.pointsMm.map(([, y]) => y)];
      return [Math.min(...xs) - half, Math.min(...ys) - half, Math.max(...xs) + half, Math.max(...ys) + half];
    }
  }
}

describe.each(['A4', 'Letter'] as const)('the stand sheet on %s', (paper) => {
  const geometry = sheetGeometry(paper);
  const { shapes } = sheetDrawing(paper);

  it('has the size of the paper (ISO 216; ANSI/ASME Y14.1)', () => {
    const size = paper === 'A4' ? [210, 297] : [8.5 * 25.4, 11 * 25.4];
    expect(geometry.widthMm).toBeCloseTo(size[0] as number, 9);
    expect(geometry.heightMm).toBeCloseTo(size[1] as number, 9);
  });

  it('prints nothing within 8 mm of the paper’s edge', () => {
    for (const shape of shapes) {
      const [left, top, right, bottom] = boundsOf(shape);
      expect(left).toBeGreaterThanOrEqual(SHEET_MARGIN_MM - 1e-9);
      expect(top).toBeGreaterThanOrEqual(SHEET_MARGIN_MM - 1e-9);
      expect(right).toBeLessThanOrEqual(geometry.widthMm - SHEET_MARGIN_MM + 1e-9);
      expect(bottom).toBeLessThanOrEqual(geometry.heightMm - SHEET_MARGIN_MM + 1e-9);
    }
  });

  it('keeps quiet paper about every mark, one ring wide', () => {
    const others = shapes.filter(({ kind }) => kind !== 'circle').map(boundsOf);
    for (const { centreMm, radiusMm, id } of geometry.marks) {
      for (const [left, top, right, bottom] of others) {
        const nearest = [
          Math.min(Math.max(centreMm[0], left), right) - centreMm[0],
          Math.min(Math.max(centreMm[1], top), bottom) - centreMm[1],
        ] as const;
        expect(Math.hypot(...nearest)).toBeGreaterThanOrEqual(radiusMm + RING_UNIT_MM * 0.75);
      }
      for (const other of geometry.marks.filter((mark) => mark.id !== id)) {
        const apart = Math.hypot(other.centreMm[0] - centreMm[0], other.centreMm[1] - centreMm[1]);
        expect(apart).toBeGreaterThanOrEqual(radiusMm + other.radiusMm + RING_UNIT_MM);
      }
    }
  });

  it('has a line of 100 mm with a tick every 10 mm', () => {
    const { fromMm, toMm } = geometry.checkLine;
    expect(Math.hypot(toMm[0] - fromMm[0], toMm[1] - fromMm[1])).toBeCloseTo(100, 9);
    const ticks = shapes.filter(
      (shape) => shape.kind === 'line' && shape.pointsMm.every(([x]) => x === shape.pointsMm[0]?.[0]),
    );
    expect(ticks).toHaveLength(11);
  });

  it('says that the greys depend on the printer', () => {
    const words = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.words] : []));
    expect(words).toContain('Greys: nominal, depends on the printer');
    expect(geometry.greys.length).toBeGreaterThanOrEqual(3);
  });

  it('comes as SVG in true size, its ink where the geometry says', async () => {
    const svg = sheetSvg(paper);
    expect(svg).toContain(`width="${geometry.widthMm}mm" height="${geometry.heightMm}mm"`);
    expect(svg).toContain(`viewBox="0 0 ${geometry.widthMm} ${geometry.heightMm}"`);
    const { data, info } = await sharp(Buffer.from(svg), { density: 90 })
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const perMm = info.width / geometry.widthMm;
    expect(info.height / geometry.heightMm).toBeCloseTo(perMm, 2);
    const greyAt = (x: number, y: number) =>
      data[(Math.floor(perMm * y) * info.width + Math.floor(perMm * x)) * info.channels] as number;
    for (const { kind, centreMm } of geometry.marks) {
      RING_EDGES[kind].toReversed().forEach((edge, k) => {
        const within = greyAt(centreMm[0] + (edge - 0.5) * RING_UNIT_MM, centreMm[1]);
        expect(within).toBe(k % 2 === 0 ? 0 : 255);
      });
    }
    const [dark, light] = [geometry.greys.at(-1), geometry.greys[0]];
    if (dark === undefined || light === undefined) throw new Error('no greys');
    // 7 % and 60 % of the light in sRGB steps: 255 × (1.055 × share^(1/2.4) − 0.055).
    expect(greyAt(dark.leftMm + 5, dark.topMm + 5)).toBe(75);
    expect(greyAt(light.leftMm + 5, light.topMm + 5)).toBe(203);
  });
});
