import { z } from 'zod';

const environmentSchema = z.object({
  PORT: z.coerce
    .number('PORT must be a number from 0 to 65535.')
    .int('PORT must be a whole number.')
    .min(0, 'PORT must be 0 or more.')
    .max(65535, 'PORT must be 65535 or less.')
    .default(4170),
  HOST: z.string().min(1, 'HOST must name an address.').default('127.0.0.1'),
  RONDURE_HOME: z.string().optional(),
  RONDURE_LOG: z
    .enum(
      ['silent', 'fatal', 'error', 'warn', 'info', 'debug', 'trace'],
      'RONDURE_LOG must be silent, fatal, error, warn, info, debug or trace.',
    )
    .default('error'),
  /** Whether a new store begins with the sample bench. */
  RONDURE_SAMPLES: z.enum(['on', 'off'], 'RONDURE_SAMPLES must be on or off.').default('on'),
  /** Whether photos are measured with the trained network. */
  RONDURE_NETWORK: z.enum(['on', 'off'], 'RONDURE_NETWORK must be on or off.').default('on'),
});
export type Environment = z.infer<typeof environmentSchema>;

/** The environment cannot be used; the message says which setting and why. */
export class EnvironmentUnusable extends Error {}

/** The settings that the server takes from its environment. */
export function readEnvironment(environment: Readonly<Record<string, string | undefined>>): Environment {
  const read = environmentSchema.safeParse(environment);
  if (read.success) return read.data;
  throw new EnvironmentUnusable(read.error.issues.map(({ message }) => message).join(' '));
}
