import { z } from 'zod';

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/i, 'Give the SHA-256 as 64 hexadecimal digits.');
const byteCountSchema = z.string().regex(/^\d{1,12}$/, 'Give the length in whole bytes.');

/**
 * What a sender may tell of its files in text fields before them, once for each file in the order sent: a file that
 * arrives otherwise is refused.
 */
export const sentFileSchema = z.object({
  sha256: z.union([sha256Schema, z.array(sha256Schema)]).optional(),
  byteCount: z.union([byteCountSchema, z.array(byteCountSchema)]).optional(),
});
export type SentFile = z.infer<typeof sentFileSchema>;
