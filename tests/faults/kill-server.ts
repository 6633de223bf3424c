import { createHash, randomUUID } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { client } from '../server/fixtures/client.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { lookAtStore } from './kept-or-absent.ts';
import { BARE, type RunningServer, startServer } from './running-server.ts';

export interface KillFigures {
  readonly kills: number;
  readonly acknowledged: number;
  readonly lost: number;
  readonly rowsWithoutFile: number;
  readonly wrongHashes: number;
  readonly leftovers: number;
  readonly setAside: number;
  readonly readyMs: { readonly median: number; readonly longest: number };
  readonly integrity: string;
}

/** Photos on their way at one time. */
const AT_ONCE = 3;

/** JPEG with a comment segment of its own (FF FE, length, text): another file of the same picture. */
export function anotherFile(jpeg: Buffer): Buffer {
  const text = Buffer.from(randomUUID());
  const head = Buffer.from([0xff, 0xfe, 0, text.length + 2]);
  return Buffer.concat([jpeg.subarray(0, 2), head, text, jpeg.subarray(2)]);
}

/**
 * Kills the server `kills` times at random moments of uploads and looks at the store after each: whatever was answered as
 * kept must be there.
 */
export async function killServer(
  home: string,
  kills: number,
  { program = BARE, onKill = () => {} }: { program?: string; onKill?: (count: number) => void } = {},
): Promise<KillFigures> {
  const jpeg = await plantJpeg(1, { width: 400, height: 300 });
  const acknowledged = new Set<string>();
  const ready: number[] = [];
  let [rowsWithoutFile, wrongHashes, leftovers] = [0, 0, 0];
  let server = await startServer(home, { program });
  const plant = await client(server.url).addPlant();
  for (let k = 0; k < kills; k += 1) {
    await killedWhileUploading(server, plant.id, jpeg, acknowledged);
    const state = lookAtStore(home);
    rowsWithoutFile += state.rowsWithoutFile;
    wrongHashes += state.wrongHashes;
    server = await startServer(home, { program });
    ready.push(server.readyMs);
    onKill(k + 1);
    leftovers += readdirSync(join(home, 'incoming')).length + lookAtStore(home).filesWithoutRow;
  }
  await server.end('SIGTERM');
  const { whole, integrity } = lookAtStore(home);
  const sorted = ready.sort((a, b) => a - b);
  return {
    kills,
    acknowledged: acknowledged.size,
    lost: [...acknowledged].filter((sha256) => !whole.has(sha256)).length,
    rowsWithoutFile,
    wrongHashes,
    leftovers,
    setAside: setAsideCount(home),
    readyMs: { median: sorted[sorted.length >> 1] ?? 0, longest: sorted.at(-1) ?? 0 },
    integrity,
  };
}

async function killedWhileUploading(
  server: RunningServer,
  plantId: string,
  jpeg: Buffer,
  acknowledged: Set<string>,
): Promise<void> {
  const { upload } = client(server.url);
  let isOver = false;
  let answered = () => {};
  const firstAnswer = new Promise<void>((resolve) => {
    answered = resolve;
  });
  async function keepSending(): Promise<void> {
    while (!isOver) {
      const bytes = anotherFile(jpeg);
      const answer = await upload(plantId, [{ name: 'a.jpg', bytes }]).catch(() => null);
      if (answer?.status === 202 && answer.body.photos[0].outcome === 'kept') {
        acknowledged.add(createHash('sha256').update(bytes).digest('hex'));
        answered();
      }
    }
  }
  const sending = Array.from({ length: AT_ONCE }, keepSending);
  // Some before anything is kept, most in the middle of keeping.
  if (Math.random() < 0.8) await firstAnswer;
  await new Promise((resolve) => setTimeout(resolve, Math.random() * 400));
  await server.end('SIGKILL');
  isOver = true;
  await Promise.all(sending);
}

function setAsideCount(home: string): number {
  try {
    return readdirSync(join(home, 'set-aside')).length;
  } catch {
    return 0;
  }
}

/** The figures in one line. */
export function killWords(figures: KillFigures): string {
  const { kills, acknowledged, lost, rowsWithoutFile, wrongHashes, leftovers, setAside, readyMs } = figures;
  return `${kills} kills during uploads: ${acknowledged} photos acknowledged, ${lost} of them lost, ${rowsWithoutFile} rows without a file, ${wrongHashes} wrong hashes, ${leftovers} leftovers after a start, ${setAside} set aside; ready again in ${Math.round(readyMs.median)} ms (median), ${Math.round(readyMs.longest)} ms (longest); integrity check ${figures.integrity}`;
}
