/** Chance that can be had again: a number from 0 up to `below`. */
export type Chance = (below: number) => number;

/** Mulberry32 over a seed. */
export function seededChance(seed: number): Chance {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

/** Where lengths, sizes and offsets stand in most files. */
const HEADER_BYTES = 600;
const ODD_NUMBERS = [0, 1, 0x7fffffff, 0x80000000, 0xffffffff, 0xfffffffe, 0x10000];

const BYTE_CHANGES: readonly ((bytes: Buffer, chance: Chance) => Buffer)[] = [
  function flipSome(bytes, chance) {
    for (let count = 1 + chance(20); count > 0; count -= 1) bytes[chance(bytes.length)] = chance(256);
    return bytes;
  },
  function flipHeader(bytes, chance) {
    const within = Math.min(bytes.length, HEADER_BYTES);
    for (let count = 1 + chance(6); count > 0; count -= 1) bytes[chance(within)] = chance(256);
    return bytes;
  },
  function setNumber(bytes, chance) {
    const at = chance(Math.min(bytes.length, HEADER_BYTES) - 4);
    bytes.writeUInt32BE(ODD_NUMBERS[chance(ODD_NUMBERS.length)] ?? 0, at);
    return bytes;
  },
  (bytes, chance) => bytes.subarray(0, chance(bytes.length)),
  function wipeRun(bytes, chance) {
    const from = chance(bytes.length);
    return bytes.fill(chance(2) * 255, from, Math.min(bytes.length, from + 1 + chance(400)));
  },
  function repeatRun(bytes, chance) {
    const from = chance(bytes.length);
    const run = bytes.subarray(from, from + 1 + chance(2000));
    return Buffer.concat([bytes.subarray(0, from), run, bytes.subarray(from)]);
  },
  function dropRun(bytes, chance) {
    const from = chance(bytes.length);
    return Buffer.concat([bytes.subarray(0, from), bytes.subarray(from + 1 + chance(200))]);
  },
];

/** The bytes with one to three changes; they themselves stay as they are. */
export function mutatedBytes(bytes: Uint8Array, chance: Chance): Buffer {
  let mutant = Buffer.from(bytes);
  for (let changes = 1 + chance(3); changes > 0 && mutant.length > 8; changes -= 1) {
    mutant = Buffer.from((BYTE_CHANGES[chance(BYTE_CHANGES.length)] ?? ((same) => same))(mutant, chance));
  }
  return mutant;
}

const deep = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);
const ODD_VALUES = [
  ...['null', 'true', '-1', '0', '1e999', '-1e-999', '9007199254740993', '1.5', '""', '[]', '{}', '[[]]'],
  ...['"2026-02-30"', '"9999-99-99"', '"\\u0000"', '"\\ud800"', '"../../x"', '"<script>"', '{"__proto__":1}'],
  ...[JSON.stringify('x'.repeat(60_000)), deep(5000), 'NaN', '"2026-06-01T00:00"', '"-0001-01-01"'],
];

/** JSON with a value put in place of another, or with changed letters, so that it may be no JSON any more. */
export function mutatedJson(body: object, chance: Chance): Buffer {
  if (chance(4) === 0) return mutatedBytes(Buffer.from(JSON.stringify(body)), chance);
  const odd = ODD_VALUES[chance(ODD_VALUES.length)] ?? 'null';
  const keys = Object.keys(body);
  if (chance(12) === 0) return Buffer.from(odd);
  const replaced = chance(keys.length);
  const fields = Object.entries(body).map(
    ([key, value], at) => `${JSON.stringify(key)}:${at === replaced ? odd : JSON.stringify(value)}`,
  );
  return Buffer.from(`{${fields.join(',')}}`);
}
