import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { heicExif } from '../../../server/intake/heic.ts';
import { takenAt } from '../../../server/intake/taken-at.ts';
import { cameraJpeg, plantJpeg, turnedHeic } from '../fixtures/photos.ts';

async function exifOf(jpeg: Buffer): Promise<Buffer | undefined> {
  return (await sharp(jpeg).metadata()).exif;
}

describe('the day a photo was taken', () => {
  it('is the camera’s own day and local time', async () => {
    expect(takenAt(await exifOf(await cameraJpeg('2026:03:08 23:59:58')))).toEqual({
      day: '2026-03-08',
      localTime: '2026-03-08T23:59:58',
    });
  });

  it('is read from HEIC too', () => {
    expect(takenAt(heicExif(turnedHeic()))).toEqual({ day: '2026-04-12', localTime: '2026-04-12T23:58:01' });
  });

  it('is unknown without EXIF', async () => {
    expect(takenAt(await exifOf(await plantJpeg()))).toBeNull();
    expect(takenAt(null)).toBeNull();
  });

  it.each([
    ['a month that is none', '2026:13:08 10:00:00'],
    ['a day that the month lacks', '2026:02:30 10:00:00'],
    ['an hour that is none', '2026:02:03 25:00:00'],
    ['a clock that was never set', '1980:01:01 00:00:00'],
    ['zeros', '0000:00:00 00:00:00'],
    ['words', 'yesterday morning!!'],
  ])('is unknown for %s', async (_, written) => {
    expect(takenAt(await exifOf(await cameraJpeg(written)))).toBeNull();
  });

  it('is unknown when the block is garbage', () => {
    expect(takenAt(Buffer.from('Exif\0\0II*\0 and then nothing of use'))).toBeNull();
    expect(takenAt(Buffer.from('nothing'))).toBeNull();
  });

  it.each(['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'America/New_York'])(
    'does not move on a machine in %s',
    async (zone) => {
      const exif = await exifOf(await cameraJpeg('2026:03:08 02:30:00'));
      const program = `
        import { takenAt } from './server/intake/taken-at.ts';
        import { localDay } from './server/local-day.ts';
        const exif = Buffer.from('${exif?.toString('base64')}', 'base64');
        console.log(takenAt(exif).localTime, localDay(new Date('2026-03-08T10:30:00Z')));`;
      const printed = execFileSync(
        process.execPath,
        ['--import', 'tsx', '--input-type=module', '--eval', program],
        { cwd: join(import.meta.dirname, '../../..'), env: { ...process.env, TZ: zone }, encoding: 'utf8' },
      );
      const local = {
        'Pacific/Kiritimati': '2026-03-09',
        'Pacific/Pago_Pago': '2026-03-07',
        'America/New_York': '2026-03-08',
      }[zone];
      expect(printed.trim()).toBe(`2026-03-08T02:30:00 ${local}`);
    },
  );
});
