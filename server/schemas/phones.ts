import { z } from 'zod';
import { idSchema } from './basics.ts';

/** `GET /api/door`: where the asking device stands. */
export const doorSchema = z.object({
  /** `desk`: the machine itself; `let-in`: a phone on the list; `outside`: neither, so a code is needed. */
  at: z.enum(['desk', 'let-in', 'outside']),
  /** It was on the list and was let out at the desk. */
  wasLetOut: z.boolean(),
});
export type Door = z.infer<typeof doorSchema>;

/** What a phone gives at the door. */
export const phoneFormSchema = z.object({
  code: z.string().max(20, 'The code has six digits.'),
  name: z.string().trim().min(1, 'Give this phone a name.').max(60, 'A name of 60 letters or fewer will do.'),
});
export type PhoneForm = z.infer<typeof phoneFormSchema>;

/** A code as the desk shows it; good once. */
export const doorCodeSchema = z.object({ code: z.string().length(6), until: z.string() });
export type DoorCode = z.infer<typeof doorCodeSchema>;

export const phoneSchema = z.object({
  id: idSchema,
  name: z.string(),
  firstSeenAt: z.string(),
  lastSeenAt: z.string(),
});
export type Phone = z.infer<typeof phoneSchema>;

/** `GET /api/phones`, at the desk only. */
export const phoneListSchema = z.object({
  /** Where a phone in the same network finds this machine; empty while the server listens to this machine only. */
  addresses: z.array(z.string()),
  phones: z.array(phoneSchema),
});
export type PhoneList = z.infer<typeof phoneListSchema>;
