import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { reportTable } from '../../server/command-line/report-table.ts';
import { reportSchema } from '../../server/schemas/report.ts';
import { photographSheet } from '../core/stand/sheet/photographed-sheet.ts';
import { temporaryFolder } from './fixtures/open-bench.ts';
import { plantJpeg, turnedHeic } from './fixtures/photos.ts';
import { drawPlant } from './fixtures/synthetic-plant.ts';

const ROOT = join(import.meta.dirname, '../..');

function measure(...words: string[]): { code: number | null; out: string; err: string } {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'server/command-line/measure.ts', ...words], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

async function photos(): Promise<{ folder: string; ball: string; turned: string; text: string }> {
  const folder = temporaryFolder();
  const [ball, turned, text] = ['ball.jpg', 'turned.heic', 'text.jpg'].map((name) => join(folder, name));
  if (!ball || !turned || !text) throw new Error('three names expected');
  writeFileSync(ball, await plantJpeg());
  writeFileSync(turned, turnedHeic());
  writeFileSync(text, 'not a photo');
  return { folder, ball, turned, text };
}

describe('the command line', () => {
  it('prints one line of JSON a photo, in the order given, and writes the masks', async () => {
    const { folder, ball, turned, text } = await photos();
    const masks = join(folder, 'masks');
    const run = measure('--rim-mm', '130', '--json', '--masks', masks, ball, text, turned);
    expect([run.code, run.err]).toEqual([0, '']);
    const reports = run.out
      .trimEnd()
      .split('\n')
      .map((line) => reportSchema.parse(JSON.parse(line)));
    expect(reports.map(({ photo, status, maskFile }) => [photo, status, maskFile])).toEqual([
      ['ball.jpg', 'measured', 'ball.canopy.png'],
      ['text.jpg', 'unreadable', null],
      ['turned.heic', 'measured', 'turned.canopy.png'],
    ]);
    expect(reports[0]?.scale?.from).toBe('rim');
    expect(reports[1]?.hint).toBe(
      'This file is text, whatever its name says. Send the photo as JPEG, PNG, WebP or HEIC.',
    );
    expect(readdirSync(masks).sort()).toEqual([
      'ball.canopy.png',
      'ball.certainty.png',
      'ball.parts.png',
      'turned.canopy.png',
      'turned.certainty.png',
      'turned.parts.png',
    ]);
    const mask = sharp(readFileSync(join(masks, 'turned.canopy.png')));
    const { width, height, channels } = await mask.metadata();
    expect([width, height, channels]).toEqual([480, 640, 1]);
    const values = new Set(await mask.raw().toBuffer());
    expect([...values].sort((a, b) => a - b)).toEqual([0, 255]);

    // The parts say the same of the canopy: leaf is 51 and flower 102, and nothing else is between the steps.
    const grey = async (name: string) =>
      sharp(readFileSync(join(masks, name)))
        .raw()
        .toBuffer();
    const [canopy, parts, certainty] = [
      await grey('ball.canopy.png'),
      await grey('ball.parts.png'),
      await grey('ball.certainty.png'),
    ];
    expect([parts.length, certainty.length]).toEqual([canopy.length, canopy.length]);
    const greys = new Set(parts);
    for (const value of greys) expect([0, 51, 102, 153, 204, 255]).toContain(value);
    for (const value of [0, 51, 153]) expect(greys).toContain(value);
    const differing = canopy.filter((inside, at) => (inside === 255) !== [51, 102].includes(parts[at] ?? 0));
    expect(differing.length).toBeLessThan(0.002 * canopy.length);
  });

  it('prints a readable table without --json', async () => {
    const { ball, text } = await photos();
    const run = measure(ball, text);
    expect(run.code).toBe(0);
    const lines = run.out.split('\n');
    expect(lines[0]).toMatch(
      /^photo +turn +status +sure +unsure zones +roundness +symmetry +lopsided % +scale +ball radius/,
    );
    expect(lines[1]).toMatch(/^ball\.jpg +– +measured +\d+ % +(none|\d+) +\d+\.\d ± \d+\.\d/);
    expect(lines[2]).toMatch(/^text\.jpg +– +unreadable +–/);
    expect(run.out).toContain('text.jpg: This file is text');
  });

  it('brings photos in line with another and takes the scale from the sheet', async () => {
    const { folder } = await photos();
    const [first, moved] = [join(folder, 'first.jpg'), join(folder, 'moved.jpg')];
    for (const [path, asideMm] of [
      [first, [300, -150]],
      [moved, [285, -150]],
    ] as const) {
      // 26 mm on film is 1201.8 px here; the plant stands on the wall's own line, at 1.35 m.
      const { raster } = photographSheet({ focalPx: (26 / Math.hypot(36, 24)) * 2000, asideMm });
      const wall = sharp(raster.data, { raw: { width: raster.width, height: raster.height, channels: 3 } });
      const plant = await drawPlant({ width: 500, height: 700, size: 0.35 }).png().toBuffer();
      const photo = wall.composite([{ input: plant, left: 80, top: 450 }]);
      writeFileSync(
        path,
        await photo
          .withExif({ IFD2: { FocalLengthIn35mmFilm: '26' } })
          .jpeg({ quality: 95 })
          .toBuffer(),
      );
    }
    const told = ['--stand', first, '--sheet', 'A4', '--plant-in-front-mm', '150', '--rim-mm', '130'];
    const run = measure(...told, '--json', moved);
    const report = reportSchema.parse(JSON.parse(run.out));
    expect(report).toMatchObject({ status: 'measured', scale: { from: 'sheet' }, frame: { from: 'marks' } });
    expect(report.frame?.shiftPx[0]).toBeCloseTo((-15 / 1500) * 1201.8, 0);
    const table = reportTable([report]);
    expect(table.split('\n')[1]).toContain(' sheet ');
    expect(table.split(`moved.jpg: ${report.frame?.words}`)).toHaveLength(2);
  });

  it('prints CSV with one head line', async () => {
    const { folder, text } = await photos();
    const odd = join(folder, '=odd, "name".jpg');
    writeFileSync(odd, await plantJpeg());
    const run = measure('--csv', odd, text);
    const [head, first, second, ...rest] = run.out.trimEnd().split('\n');
    expect(run.code).toBe(0);
    expect(head?.startsWith('photo,widthPx,heightPx,turnDeg,status,')).toBe(true);
    expect(first?.startsWith(`"'=odd, ""name"".jpg",640,480,,measured,`)).toBe(true);
    expect(second?.startsWith('text.jpg,,,,unreadable,')).toBe(true);
    expect(rest).toEqual([]);
  });

  it('reports a turned sitting as one object', async () => {
    const { ball, turned } = await photos();
    const run = measure('--json', '--turned', '--rim-mm', '130', `0=${ball}`, `90=${turned}`);
    expect(run.code).toBe(0);
    const sitting = JSON.parse(run.out);
    expect(sitting.views.map((view: { turnDeg: number }) => view.turnDeg)).toEqual([0, 90]);
    expect(sitting.plan.directions).toBe(2);
    expect(sitting.plan.lopsidedness).toMatchObject({
      percent: expect.any(Number),
      even: expect.any(Boolean),
    });
    expect(sitting.plan.hull.volumeMl).toBeGreaterThan(0);
    expect(sitting.plan.reach).toHaveLength(72);
    for (const cut of sitting.cuts) {
      expect(cut.azimuthDeg >= 0 && cut.azimuthDeg < 360).toBe(true);
      expect(cut.excessMm).toBeGreaterThan(0);
      expect(['shoot', 'shoulder']).toContain(cut.kind);
    }
    // The second photo was taken with the camera held on its side, so the pot stands elsewhere in it.
    expect(sitting.faults).toMatchObject([{ kind: 'pot-moved', view: 1, from: 'rim' }]);
    expect(sitting.notes.join(' ')).toContain('Two directions tell the heavy side');
    // Each view is reported as it would be by itself.
    const alone = JSON.parse(measure('--json', '--rim-mm', '130', ball).out);
    expect(sitting.views[0]).toEqual({ ...alone, turnDeg: 0 });
  });

  it('says of a turned sitting of one photo what it cannot tell, as a table too', async () => {
    const { ball } = await photos();
    const run = measure('--turned', '--light-side', 'left', `0=${ball}`);
    expect(run.code).toBe(0);
    expect(run.out).toContain('directions    1');
    expect(run.out).toContain('lopsided      –');
    expect(run.out).toContain('tells left from right but not front from back');
    expect(run.out).toContain('A view has no scale, so there are no mm and no ml.');
    expect(run.out).toContain('A view has no scale, so long stems cannot be placed on the plant.');
    expect(run.out).not.toContain('Long stems:');
  });

  it('gives the same report whatever the machine’s zone and language', async () => {
    const { ball } = await photos();
    const here = measure('--json', ball).out;
    const there = spawnSync(
      process.execPath,
      ['--import', 'tsx', 'server/command-line/measure.ts', '--json', ball],
      { cwd: ROOT, encoding: 'utf8', env: { ...process.env, TZ: 'Asia/Kathmandu', LC_ALL: 'de_DE.UTF-8' } },
    ).stdout;
    expect(there).toBe(here);
  });

  it('explains itself with --help', () => {
    const run = measure('--help');
    expect(run.code).toBe(0);
    for (const option of [
      '--rim-mm',
      '--empty',
      '--json',
      '--csv',
      '--masks',
      '--turned',
      '--without-network',
      '--stand',
      '--sheet',
      '--sheet-place',
      '--plant-in-front-mm',
      '--camera-mm',
      'NAME.parts.png',
      'Exit:',
    ]) {
      expect(run.out).toContain(option);
    }
  });

  it.each([
    ['no photo', [], 'Name at least one photo.'],
    ['a rim that cannot be', ['--rim-mm', '5', 'BALL'], 'from 30 to 1000, for example 130'],
    ['a rim that is no number', ['--rim-mm', 'wide', 'BALL'], 'from 30 to 1000, for example 130'],
    ['an unknown option', ['--round', 'BALL'], "unknown option '--round'"],
    ['a photo that is not there', ['lost.jpg'], 'There is no file lost.jpg'],
    ['an empty photo that is not there', ['--empty', 'lost.jpg', 'BALL'], 'There is no file lost.jpg'],
    ['a stand’s photo that is not there', ['--stand', 'lost.jpg', 'BALL'], 'There is no file lost.jpg'],
    ['paper that is not printed on', ['--sheet', 'A3', 'BALL'], 'Allowed choices are A4, Letter'],
    ['a place without a sheet', ['--sheet-place', 'bench', 'BALL'], 'Say with --sheet A4 or --sheet Letter'],
    ['a sheet behind the plant', ['--sheet', 'A4', 'BALL'], 'give --plant-in-front-mm, for example 150'],
    ['a camera too near', ['--camera-mm', '20', 'BALL'], 'from 200 to 20000, for example 1500'],
    ['a folder', ['.'], '. is a folder; name the photos in it.'],
    ['two forms at once', ['--json', '--csv', 'BALL'], 'Give --json or --csv, not both.'],
    ['a turn left out', ['--turned', 'BALL'], 'give each photo its turn in degrees'],
    ['a turn past the circle', ['--turned', '400=BALL'], 'give each photo its turn in degrees'],
    ['one turn twice', ['--turned', '0=BALL', '0=BALL'], 'have the same turn'],
    ['a light side without a sitting', ['--light-side', 'left', 'BALL'], 'give it with --turned'],
    ['one mask for two photos', ['--masks', 'm', 'BALL', 'BALL'], 'would share the mask ball.canopy.png'],
  ])('ends with 2 and a sentence on %s', async (_, words, sentence) => {
    const { ball } = await photos();
    const run = measure(...words.map((word) => word.replace('BALL', ball)));
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).toContain(sentence);
    expect(run.err).toContain('Usage: measure');
  });

  it('says when the folder for the masks cannot be made', async () => {
    const { ball, text } = await photos();
    const run = measure('--masks', join(text, 'masks'), ball);
    expect(run.code).toBe(2);
    expect(run.err).toContain('for the masks cannot be made (ENOTDIR)');
  });
});
