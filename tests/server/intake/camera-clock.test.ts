import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { measureFile } from '../../../server/measuring/measure-file.ts';
import { notesOnDay, notesUnderPhoto } from '../../../web/src/photo/day-notes.ts';
import { onlyEntry } from '../fixtures/client.ts';
import { openBench } from '../fixtures/open-bench.ts';
import { cameraJpeg } from '../fixtures/photos.ts';
import { drawPlant } from '../fixtures/synthetic-plant.ts';

const ROOT = join(import.meta.dirname, '../../..');

async function exifOf(written: string, offset: string | null = null): Promise<string> {
  const jpeg = await drawPlant({ width: 64, height: 64 })
    .withExif({ IFD2: { DateTimeOriginal: written, ...(offset ? { OffsetTimeOriginal: offset } : {}) } })
    .jpeg()
    .toBuffer();
  return Buffer.from((await sharp(jpeg).metadata()).exif ?? []).toString('base64');
}

interface Case {
  readonly written: string;
  readonly offset?: string;
  /** The day and time that must come out, digit for digit as they went in; `null` for none. */
  readonly kept: string | null;
  readonly notes: readonly RegExp[];
}

const NO_ZONE = /^The camera’s clock told no time zone\. The day is taken as it stands/;
const SKIPPED =
  /clocks here skipped when they were put forward\. The day is taken as it stands: set the camera’s clock\.$/;
const TWICE = /came twice here as clocks were put back\. Both are on that day/;
const NEVER_SET =
  /^The camera’s clock said 1 January 1970, so it was never set, .* Give the photo its day, and set the camera’s clock\.$/;
const AHEAD =
  /a day that was still to come when the photo was sent\. It is taken as it stands: give the photo its day/;

/**
 * Changes of the clocks in 2026 by the IANA time zone database: Europe/Berlin 29 March 02:00 → 03:00 and 25 October 03:00 → 02:00;
 * America/St_Johns 8 March 02:00 → 03:00 and 1 November 02:00 → 01:00; Australia/Lord_Howe by half an hour, 5 April 02:00 → 01:30 and
 * 4 October 02:00 → 02:30. Asia/Kolkata has none.
 */
const CASES: Readonly<Record<string, readonly Case[]>> = {
  'Europe/Berlin': [
    { written: '2026:03:29 02:30:00', kept: '2026-03-29T02:30:00', notes: [SKIPPED] },
    { written: '2026:10:25 02:30:00', kept: '2026-10-25T02:30:00', notes: [TWICE] },
    { written: '2026:10:25 02:30:00', offset: '+02:00', kept: '2026-10-25T02:30:00', notes: [] },
    { written: '2026:03:29 02:30:00', offset: '+01:00', kept: '2026-03-29T02:30:00', notes: [] },
    { written: '2026:10:25 03:00:00', kept: '2026-10-25T03:00:00', notes: [NO_ZONE] },
    { written: '2026:05:04 23:59:59', kept: '2026-05-04T23:59:59', notes: [NO_ZONE] },
    { written: '2026:05:04 10:00:00', offset: '+02:00', kept: '2026-05-04T10:00:00', notes: [] },
    { written: '1970:01:01 00:00:00', kept: null, notes: [NEVER_SET] },
    { written: '2031:03:03 10:00:00', kept: '2031-03-03T10:00:00', notes: [AHEAD, NO_ZONE] },
    { written: '2026:12:02 00:00:00', offset: '+13:00', kept: '2026-12-02T00:00:00', notes: [AHEAD] },
  ],
  'America/St_Johns': [
    { written: '2026:03:08 02:30:00', kept: '2026-03-08T02:30:00', notes: [SKIPPED] },
    { written: '2026:11:01 01:30:00', kept: '2026-11-01T01:30:00', notes: [TWICE] },
    { written: '2026:03:29 02:30:00', kept: '2026-03-29T02:30:00', notes: [NO_ZONE] },
  ],
  'Australia/Lord_Howe': [
    { written: '2026:10:04 02:15:00', kept: '2026-10-04T02:15:00', notes: [SKIPPED] },
    { written: '2026:04:05 01:45:00', kept: '2026-04-05T01:45:00', notes: [TWICE] },
  ],
  'Asia/Kolkata': [
    { written: '2026:03:29 02:30:00', kept: '2026-03-29T02:30:00', notes: [NO_ZONE] },
    { written: '2026:10:25 02:30:00', kept: '2026-10-25T02:30:00', notes: [NO_ZONE] },
  ],
};
/** The day on which they came in. */
const RECEIVED = '2026-12-01';

describe('the time that a camera wrote', () => {
  it.each(Object.keys(CASES))(
    'is kept digit for digit in %s, and what is odd about it is said',
    async (zone) => {
      const cases = CASES[zone] ?? [];
      const blocks = await Promise.all(cases.map(({ written, offset }) => exifOf(written, offset ?? null)));
      const program = `
      import { clockNotes } from './server/intake/clock-notes.ts';
      import { takenAt } from './server/intake/taken-at.ts';
      const blocks = ${JSON.stringify(blocks)}.map((text) => Buffer.from(text, 'base64'));
      console.log(JSON.stringify(blocks.map((exif) => [takenAt(exif)?.localTime ?? null, clockNotes(exif, '${RECEIVED}')])));`;
      const printed = execFileSync(
        process.execPath,
        ['--import', 'tsx', '--input-type=module', '--eval', program],
        { cwd: ROOT, env: { ...process.env, TZ: zone }, encoding: 'utf8' },
      );
      const seen = JSON.parse(printed) as [string | null, string[]][];
      for (const [k, { written, kept, notes }] of cases.entries()) {
        expect([written, seen[k]?.[0]]).toEqual([written, kept]);
        expect([written, seen[k]?.[1].length], JSON.stringify(seen[k])).toEqual([written, notes.length]);
        for (const [n, note] of notes.entries()) expect(seen[k]?.[1][n], written).toMatch(note);
      }
      // Only what asks for something is read under the photo; the rest where its day is put right.
      const quiet = cases.flatMap(({ notes }) => notes.filter((note) => note === NO_ZONE)).length;
      const all = seen.flatMap(([, told]) => told);
      expect([notesOnDay(all).length, notesUnderPhoto(all).length]).toEqual([quiet, all.length - quiet]);
      const flagged = seen.filter(([, notes]) => notes.length > 0).length;
      console.log(`${zone}: ${cases.length} camera times, ${flagged} flagged, 0 moved`);
    },
  );
});

describe('a photo with an odd camera time', () => {
  it.each([
    ['1970:01:01 00:00:00', '2026-06-01', 'upload', NEVER_SET],
    ['2031:03:03 10:00:00', '2031-03-03', 'exif', AHEAD],
    ['2026:05:04 10:00:00', '2026-05-04', 'exif', NO_ZONE],
  ] as const)(
    'of %s stands at %s, says why, and no more once the grower gives the day',
    async (written, day, from, note) => {
      const bench = await openBench({ measure: measureFile, network: false });
      const plant = await bench.addPlant({ rimMm: 130 });
      const entry = onlyEntry(
        await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await cameraJpeg(written) }]),
      );
      if (entry.outcome !== 'kept') throw new Error(entry.detail);
      await bench.services.queue.whenIdle();
      const path = `/api/views/${entry.view.id}`;
      const { body } = await bench.send('GET', path);
      expect(body.takenFrom).toBe(from);
      expect(body.report.notes).toContainEqual(expect.stringMatching(note));
      const days = async () =>
        (await bench.send('GET', `/api/plants/${plant.id}`)).body.sittings.map(
          (sitting: { day: string }) => sitting.day,
        );
      expect(await days()).toContain(day);
      const given = await bench.send('PATCH', path, { day: '2026-05-20' });
      expect(given.status).toBe(200);
      expect(given.body.report.notes.filter((one: string) => one.startsWith('The camera’s clock'))).toEqual(
        [],
      );
    },
    60_000,
  );
});
