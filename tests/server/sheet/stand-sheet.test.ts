import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { sheetGeometry } from '../../../core/stand/sheet/sheet-geometry.ts';
import { openBench } from '../fixtures/open-bench.ts';

const POINT_MM = 25.4 / 72;

/** The drawing operators of the page, unpacked. */
function pageContent(pdf: Buffer): string {
  const start = pdf.indexOf('stream\n') + 'stream\n'.length;
  return inflateSync(pdf.subarray(start, pdf.indexOf('\nendstream', start))).toString('latin1');
}

describe('the stand sheet', () => {
  // ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1: Letter is 8.5 × 11 inches.
  it.each([
    ['A4', 210, 297],
    ['Letter', 215.9, 279.4],
  ] as const)('on %s comes in true size as SVG and PDF', async (paper, widthMm, heightMm) => {
    const { send } = await openBench();
    const svg = await send('GET', `/api/stand-sheet.svg?paper=${paper}`);
    expect(svg.headers.get('content-type')).toContain('image/svg+xml');
    expect(svg.body.toString('utf8')).toContain(
      `width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}"`,
    );
    const { headers, body: pdf } = await send('GET', `/api/stand-sheet.pdf?paper=${paper}`);
    expect(headers.get('content-type')).toBe('application/pdf');
    expect(headers.get('content-disposition')).toBe(`inline; filename="rondure-stand-sheet-${paper}.pdf"`);
    const [, wide, high] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1')) ?? [];
    // To a fiftieth of a millimetre: 0.02 % of the line that the print is checked by.
    expect(Math.abs(Number(wide) * POINT_MM - widthMm)).toBeLessThan(0.02);
    expect(Math.abs(Number(high) * POINT_MM - heightMm)).toBeLessThan(0.02);
    expect(pdf.toString('latin1')).toContain('/PrintScaling /None');
  });

  it('has a line of 100 mm on the printed page to check it by', async () => {
    const { send } = await openBench();
    const content = pageContent((await send('GET', '/api/stand-sheet.pdf?paper=A4')).body);
    const scale = Number(/^([\d.]+) 0 0 [\d.]+ 0 0 cm$/m.exec(content)?.[1]);
    expect(scale * POINT_MM).toBeCloseTo(1, 5);
    const { fromMm, toMm } = sheetGeometry('A4').checkLine;
    expect(content).toContain(`${fromMm[0]} ${fromMm[1]} m\n${toMm[0]} ${toMm[1]} l`);
    expect((toMm[0] - fromMm[0]) * scale * POINT_MM).toBeCloseTo(100, 3);
  });

  it('is the same, byte by byte, each time', async () => {
    const { send } = await openBench();
    const [one, other] = [
      await send('GET', '/api/stand-sheet.pdf'),
      await send('GET', '/api/stand-sheet.pdf'),
    ];
    expect(one.body.equals(other.body)).toBe(true);
  });

  it('is not made for other paper', async () => {
    const { send } = await openBench();
    for (const ending of ['svg', 'pdf']) {
      const { status, body } = await send('GET', `/api/stand-sheet.${ending}?paper=A3`);
      expect([status, body.detail]).toEqual([422, 'The sheet is printed on A4 or Letter.']);
    }
  });
});
