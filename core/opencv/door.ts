import type { OpenCv, OpenCvObject } from './typings.ts';

/**
 * The one door to OpenCV. Everything that OpenCV hands out lives in a heap of its own that no garbage
 * collector sees, so work goes through `use`, which frees whatever was given to `keep`, also when it throws.
 */
export interface OpenCvDoor {
  use<T>(work: (cv: OpenCv, keep: Keep) => T): T;
}

/** Marks an OpenCV object to be freed at the end of the scope, and hands it back. */
export type Keep = <T extends OpenCvObject>(object: T) => T;

let opened: Promise<OpenCvDoor> | null = null;

/**
 * Loads OpenCV on the first call (about 0.1 s) and hands out the same door afterwards.
 *
 * Call it in worker threads only: on the main thread the library installs process handlers which end the
 * program on any unhandled rejection.
 */
export function openOpenCv(): Promise<OpenCvDoor> {
  opened ??= load();
  return opened;
}

async function load(): Promise<OpenCvDoor> {
  // The name is kept in a variable so that the compiler uses our typings and not the library's own,
  // which do not compile without a DOM.
  const library: string = 'opencv-wasm';
  const loaded = (await import(library)) as { cv?: OpenCv; default?: { cv: OpenCv } };
  const cv = loaded.cv ?? loaded.default?.cv;
  if (cv === undefined) throw new Error('OpenCV could not be loaded: the library exports no cv object');
  return { use: (work) => useOnce(cv, work) };
}

function useOnce<T>(cv: OpenCv, work: (cv: OpenCv, keep: Keep) => T): T {
  const kept: OpenCvObject[] = [];
  const keep: Keep = (object) => {
    kept.push(object);
    return object;
  };
  try {
    return work(cv, keep);
  } catch (thrown) {
    throw readableError(cv, thrown);
  } finally {
    for (const object of kept.reverse()) object.delete();
  }
}

/** OpenCV throws bare numbers, the address of its exception: turns one into an `Error` with its words. */
function readableError(cv: OpenCv, thrown: unknown): unknown {
  const address = typeof thrown === 'number' ? thrown : null;
  if (address === null) return thrown;
  return new Error(`OpenCV failed: ${cv.exceptionFromPtr(address).msg}`);
}
