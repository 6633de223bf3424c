import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openOpenCv } from '../../core/opencv/door.ts';

/** Of OpenCV, what works on pictures; the rest only lays out memory. */
const OPERATIONS = [
  'resize',
  'threshold',
  'GaussianBlur',
  'blur',
  'dilate',
  'erode',
  'morphologyEx',
  'connectedComponentsWithStats',
  'distanceTransform',
  'grabCut',
  'findTransformECC',
  'warpAffine',
  'goodFeaturesToTrack',
  'calcOpticalFlowPyrLK',
  'adaptiveThreshold',
  'findContours',
  'findHomography',
] as const;
type Operation = (typeof OPERATIONS)[number];

interface AnyMat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  type(): number;
}

/** One call of an operation, with what went in. */
interface Call {
  readonly op: Operation;
  readonly ms: number;
  /** A picture as its place in the file of pictures; what the call fills as `null`; anything else as it was given. */
  readonly given: readonly unknown[];
}

interface StoredPicture {
  readonly rows: number;
  readonly cols: number;
  /** OpenCV's number for depth and channels. */
  readonly type: number;
  readonly offset: number;
  readonly bytes: number;
}

/**
 * Listens to every call of OpenCV while `work` is done, and writes the calls down so that another OpenCV can do them over on the same pictures.
 *
 * @param folder gets `calls.json` and `pictures.bin`
 * @returns milliseconds spent in each operation here
 */
export async function recordCalls(
  folder: string,
  work: () => Promise<unknown>,
): Promise<Map<string, number>> {
  const calls: Call[] = [];
  const stored: StoredPicture[] = [];
  const parts: Uint8Array[] = [];
  let offset = 0;
  const store = (mat: AnyMat): unknown => {
    const { rows, cols, data } = mat;
    if (rows === 0 || cols === 0) return null;
    stored.push({ rows, cols, type: mat.type(), offset, bytes: data.length });
    parts.push(data.slice());
    offset += data.length;
    return { picture: stored.length - 1 };
  };
  const letGo = await wrapOperations((op, args, run) => {
    const given = args.map((arg) => {
      if (isMat(arg)) return store(arg);
      if (isVector(arg)) return null;
      return isArrayLike(arg) ? Array.from(arg) : arg;
    });
    const begun = performance.now();
    const result = run();
    calls.push({ op, ms: performance.now() - begun, given });
    return result;
  });
  try {
    await work();
  } finally {
    letGo();
  }
  writeFileSync(join(folder, 'pictures.bin'), Buffer.concat(parts));
  writeFileSync(join(folder, 'calls.json'), JSON.stringify({ calls, stored }));
  return sumByOperation(calls);
}

/** Milliseconds in each operation while `work` is done, nothing written down. */
export async function timeCalls(work: () => Promise<unknown>): Promise<Map<string, number>> {
  const calls: Pick<Call, 'op' | 'ms'>[] = [];
  const letGo = await wrapOperations((op, _, run) => {
    const begun = performance.now();
    const result = run();
    calls.push({ op, ms: performance.now() - begun });
    return result;
  });
  try {
    await work();
  } finally {
    letGo();
  }
  return sumByOperation(calls);
}

type Listener = (op: Operation, args: unknown[], run: () => unknown) => unknown;

/** Puts `listen` before every operation; the function that comes back takes it away again. */
async function wrapOperations(listen: Listener): Promise<() => void> {
  const door = await openOpenCv();
  const cv = door.use((opened) => opened) as unknown as Record<string, (...args: unknown[]) => unknown>;
  const own = OPERATIONS.map((op) => [op, cv[op] as (...args: unknown[]) => unknown] as const);
  for (const [op, call] of own) {
    const heard = (...args: unknown[]) => listen(op, args, () => call.apply(cv, args));
    // A function of several forms looks its own forms up under its name.
    cv[op] = Object.assign(heard, call);
  }
  return () => {
    for (const [op, call] of own) cv[op] = call;
  };
}

function sumByOperation(calls: readonly Pick<Call, 'op' | 'ms'>[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { op, ms } of calls) sums.set(op, (sums.get(op) ?? 0) + ms);
  return sums;
}

function isMat(value: unknown): value is AnyMat {
  return typeof value === 'object' && value !== null && 'rows' in value && 'data' in value;
}

function isVector(value: unknown): boolean {
  return typeof value === 'object' && value !== null && 'push_back' in value;
}

/** OpenCV's scalars are no arrays. */
function isArrayLike(value: unknown): value is ArrayLike<unknown> {
  return typeof value === 'object' && value !== null && 'length' in value;
}
