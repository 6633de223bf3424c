import { readFileSync } from 'node:fs';
import { client } from '../server/fixtures/client.ts';
import { cameraJpeg, plantJpeg, turnedHeic } from '../server/fixtures/photos.ts';
import { drawPlant } from '../server/fixtures/synthetic-plant.ts';
import { type Chance, mutatedBytes, mutatedJson, seededChance } from './mutate.ts';
import { BARE, type RunningServer, startServer } from './running-server.ts';

export interface MutantFigures {
  readonly mutants: number;
  readonly exits: number;
  readonly kept: number;
  readonly refused: number;
  /** Answers of 500 and above, each with the mutant that met it. */
  readonly brokeDown: readonly string[];
  readonly longestMs: number;
  readonly longest: string;
  /** The most that the server held at any time; `null` where the system does not tell. */
  readonly mostMb: number | null;
}

export const MUTANT_KINDS = ['jpeg', 'png', 'webp', 'heic', 'json'] as const;
type Kind = (typeof MUTANT_KINDS)[number];

interface Mutant {
  readonly name: string;
  readonly method: string;
  readonly path: string;
  readonly body: FormData | Buffer;
}

/** Sends `count` seeded mutants of photos and of requests to a server in a process of its own, a few at once. */
export async function sendMutants(
  home: string,
  { count, seed, atOnce = 3, onSent = () => {} }: MutantWish,
): Promise<MutantFigures> {
  let server = await startMutantServer(home);
  const make = await mutantMaker(server);
  let [exits, kept, refused, longestMs, longest, sent] = [0, 0, 0, 0, '', 0];
  const mostMb: number[] = [];
  const brokeDown: string[] = [];

  async function sendOne(at: number): Promise<void> {
    // Each has a chance of its own, so that any can be made again alone.
    const mutant = make(at, seededChance(seed * 1_000_003 + at));
    const { url } = server;
    const start = performance.now();
    const answer = await answerTo(url, mutant);
    const tookMs = performance.now() - start;
    if (tookMs > longestMs) [longestMs, longest] = [tookMs, mutant.name];
    if (answer === null) {
      exits += 1;
      brokeDown.push(`${mutant.name}: no answer`);
      if (server.process.exitCode !== null && server.url === url) server = await startMutantServer(home);
    } else if (answer.status >= 500) brokeDown.push(`${mutant.name}: ${answer.status}`);
    else if (answer.kept) kept += 1;
    else refused += 1;
    sent += 1;
    onSent(sent);
  }

  let next = 0;
  try {
    await Promise.all(
      Array.from({ length: atOnce }, async () => {
        while (next < count) await sendOne(next++);
      }),
    );
    const most = peakMb(server.process.pid);
    if (most !== null) mostMb.push(most);
  } finally {
    await server.end('SIGTERM');
  }
  return {
    mutants: count,
    exits,
    kept,
    refused,
    brokeDown,
    longestMs,
    longest,
    mostMb: mostMb.length > 0 ? Math.max(...mostMb) : null,
  };
}

export interface MutantWish {
  readonly count: number;
  readonly seed: number;
  readonly atOnce?: number;
  readonly onSent?: (sent: number) => void;
}

const startMutantServer = (home: string) =>
  startServer(home, { program: BARE, environment: { BARE_INTAKE: 'thread' } });

async function mutantMaker({ url }: RunningServer): Promise<(at: number, chance: Chance) => Mutant> {
  const { addPlant, upload, send } = client(url);
  const plant = await addPlant({ rimMm: 130 });
  const small = { width: 240, height: 210 };
  const photos: Record<Exclude<Kind, 'json'>, readonly Buffer[]> = {
    jpeg: [
      await plantJpeg(1, small),
      await cameraJpeg('2026:05:30 09:00:00', { gps: true }),
      await drawPlant(small).jpeg({ progressive: true }).toBuffer(),
    ],
    png: [await drawPlant(small).png().toBuffer(), await drawPlant(small).png({ palette: true }).toBuffer()],
    webp: [
      await drawPlant(small).webp().toBuffer(),
      await drawPlant(small).webp({ lossless: true }).toBuffer(),
    ],
    heic: [turnedHeic()],
  };
  const sent = await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg(9, small) }]);
  const viewId: string = sent.body.photos[0].view.id;
  const show = (await send('POST', '/api/shows', { name: 'Spring show', day: '2027-05-20' })).body;
  const { id } = plant;
  const day = '2026-06-01';
  const requests: readonly (readonly [method: string, path: string, body: object])[] = [
    [
      'POST',
      '/api/plants',
      { name: 'Evening Bramble', kind: 'regal', variety: 'x', rimMm: 120, showDay: null },
    ],
    ['PATCH', `/api/plants/${id}`, { name: 'Evening Bramble', rimMm: 140, turnRhythm: null, cutTo: null }],
    ['POST', `/api/plants/${id}/stops`, { day, depth: 'tip', note: 'a' }],
    ['POST', `/api/plants/${id}/notes`, { day, kind: 'note', text: 'fed' }],
    ['POST', `/api/plants/${id}/turns`, { day, facesLightDeg: 90, note: '' }],
    ['POST', `/api/plants/${id}/own-work`, { kind: 'feed', day, everyDays: 7, untilDay: null, text: 'feed' }],
    [
      'POST',
      '/api/shows',
      { name: 'Autumn show', day, place: 'hall', rules: '', classes: [{ name: 'one' }] },
    ],
    ['PUT', `/api/plants/${id}/entries/${show.id}`, { classId: null, result: '' }],
    ['POST', '/api/stands', { name: 'Bench by the window', sinceDay: day }],
    ['PATCH', `/api/views/${viewId}`, { turnDeg: 90, day }],
    ['PUT', `/api/views/${viewId}/strokes`, { strokes: [{ kind: 'keep', widthPx: 9, pointsPx: [[9, 9]] }] }],
    ['POST', '/api/season-notes', { year: 2026, text: 'wet' }],
  ];
  return (at, chance) => {
    const kind = MUTANT_KINDS[at % MUTANT_KINDS.length] as Kind;
    if (kind === 'json') {
      const [method, path, body] = requests[chance(requests.length)] as (typeof requests)[number];
      const json = mutatedJson(body, chance);
      return { name: `${at} ${method} ${path} ${json.toString().slice(0, 120)}`, method, path, body: json };
    }
    const seeds = photos[kind];
    const bytes = mutatedBytes(seeds[chance(seeds.length)] as Buffer, chance);
    const body = new FormData();
    body.append('photos', new Blob([new Uint8Array(bytes)]), `${at}.${kind}`);
    return { name: `${at} ${kind}`, method: 'POST', path: `/api/plants/${id}/photos`, body };
  };
}

async function answerTo(
  url: string,
  { method, path, body }: Mutant,
): Promise<{ status: number; kept: boolean } | null> {
  try {
    const headers = body instanceof FormData ? {} : { 'content-type': 'application/json' };
    const bytes = body instanceof FormData ? body : new Uint8Array(body);
    const response = await fetch(url + path, { method, body: bytes, headers });
    const text = await response.text();
    return {
      status: response.status,
      kept: response.status < 300 && !text.includes('"outcome":"refused"'),
    };
  } catch {
    return null;
  }
}

/** The most memory that a process has held, MB; Linux keeps it. */
function peakMb(pid: number | undefined): number | null {
  try {
    const kilobytes = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return kilobytes === undefined ? null : Number(kilobytes) / 1000;
  } catch {
    return null;
  }
}

/** The figures in words. */
export function mutantWords(figures: MutantFigures): string {
  const { mutants, exits, kept, refused, brokeDown, longestMs, longest, mostMb } = figures;
  const memory = mostMb === null ? 'memory not told by this system' : `at most ${Math.round(mostMb)} MB`;
  return [
    `${mutants} mutants of ${MUTANT_KINDS.join(', ')}: ${exits} without an answer, ${kept} taken, ${refused} refused, ${brokeDown.length} that the program broke down over; longest ${Math.round(longestMs)} ms (${longest.slice(0, 60)}); ${memory}`,
    ...brokeDown.slice(0, 20),
  ].join('\n');
}
