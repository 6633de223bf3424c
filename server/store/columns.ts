import { z } from 'zod';

/** A truth value as the database keeps it: 0 or 1. */
export const flag = z.union([z.literal(0), z.literal(1)]).transform((value) => value === 1);

/** JSON in a column of text; pipe it into the schema of what it holds. */
export const jsonText = z.string().transform((text): unknown => JSON.parse(text));
