/**
 * Words for our own mistakes. What a photo or a grower brings is a value (`{ ok: false, reason, hint }`);
 * what a caller in the code gets wrong throws here, always in the form
 * "Expected a positive number for radiusPx but received -3".
 */
export function expectation(wanted: string, name: string, received: unknown): string {
  return `Expected ${wanted} for ${name} but received ${worded(received)}`;
}

/** Throws a `RangeError` unless `value` is a finite number. Written so that NaN fails. */
export function requireFinite(value: number, name: string): void {
  if (!Number.isFinite(value)) throw new RangeError(expectation('a finite number', name, value));
}

/** Throws a `RangeError` unless `value` is a finite number above zero. */
export function requirePositive(value: number, name: string): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(expectation('a positive number', name, value));
  }
}

/** Throws a `RangeError` unless `value` is a whole number above zero. */
export function requirePositiveInteger(value: number, name: string): void {
  if (!(Number.isInteger(value) && value > 0)) {
    throw new RangeError(expectation('a positive whole number', name, value));
  }
}

/** Throws a `RangeError` unless `count` is at least `least`. */
export function requireAtLeast(count: number, least: number, name: string): void {
  if (!(count >= least)) throw new RangeError(expectation(`at least ${least}`, name, count));
}

function worded(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value);
  if (Array.isArray(value)) return `an array of ${value.length}`;
  return String(value);
}
