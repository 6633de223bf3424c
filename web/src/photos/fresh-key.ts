/** A key that no other page or photo has. `crypto.randomUUID` is missing over plain http; this is not. */
export function freshKey(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}
