import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { openBench } from '../fixtures/open-bench.ts';

const POINT_MM = 25.4 / 72;

/** The drawing operators of the page, unpacked. */
function pageContent(pdf: Buffer): string {
  const start = pdf.indexOf('stream\n') + 'stream\n'.length;
  return inflateSync(pdf.subarray(start, pdf.indexOf('\nendstream', start))).toString('latin1');
}

describe('the turn collar', () => {
  // ISO 216 and ANSI/ASME Y14.1, laid on their side.
  it.each([
    ['A4', 297, 210],
    ['Letter', 279.4, 215.9],
  ] as const)('on %s comes in true size as SVG and PDF', async (paper, widthMm, heightMm) => {
    const { send } = await openBench();
    const svg = await send('GET', `/api/turn-collar.svg?rimMm=130&paper=${paper}`);
    expect(svg.headers.get('content-type')).toContain('image/svg+xml');
    expect(svg.body.toString('utf8')).toContain(
      `width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}"`,
    );
    expect(svg.body.toString('utf8')).toContain('Turn collar, for a rim of 130 mm across');
    const { headers, body: pdf } = await send('GET', `/api/turn-collar.pdf?rimMm=130&paper=${paper}`);
    expect(headers.get('content-type')).toBe('application/pdf');
    expect(headers.get('content-disposition')).toBe(
      `inline; filename="rondure-turn-collar-130-${paper}.pdf"`,
    );
    const [, wide, high] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1')) ?? [];
    expect(Math.abs(Number(wide) * POINT_MM - widthMm)).toBeLessThan(0.02);
    expect(Math.abs(Number(high) * POINT_MM - heightMm)).toBeLessThan(0.02);
    expect(pdf.toString('latin1')).toContain('/PrintScaling /None');
  });

  it('has a line of 100 mm on the printed page to check it by', async () => {
    const { send } = await openBench();
    const content = pageContent((await send('GET', '/api/turn-collar.pdf?rimMm=130&paper=A4')).body);
    const scale = Number(/^([\d.]+) 0 0 [\d.]+ 0 0 cm$/m.exec(content)?.[1]);
    expect(content).toContain('8.5 201 m\n108.5 201 l');
    expect(100 * scale * POINT_MM).toBeCloseTo(100, 3);
  });

  it.each(['', '?rimMm=abc', '?rimMm=20', '?rimMm=1300'])(
    'says what is missing in the address "%s"',
    async (query) => {
      const { send } = await openBench();
      for (const ending of ['svg', 'pdf']) {
        const { status, body } = await send('GET', `/api/turn-collar.${ending}${query}`);
        expect([status, body.detail]).toEqual([
          422,
          'Give the pot rim’s outer diameter in millimetres, 60 to 200, for example rimMm=130.',
        ]);
      }
    },
  );

  it('is not made for other paper', async () => {
    const { send } = await openBench();
    const { status, body } = await send('GET', '/api/turn-collar.svg?rimMm=130&paper=A3');
    expect([status, body.detail]).toEqual([422, 'The sheet is printed on A4 or Letter.']);
  });
});
