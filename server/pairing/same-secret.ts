import { createHash, timingSafeEqual } from 'node:crypto';

/** Whether two secrets are the same, in a time that tells nothing of where they differ or how long they are. */
export function isSameSecret(told: string, kept: string): boolean {
  return timingSafeEqual(digest(told), digest(kept));
}

function digest(secret: string): Buffer {
  return createHash('sha256').update(secret).digest();
}
