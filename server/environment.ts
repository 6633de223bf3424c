import { parseArgs } from 'node:util';
import { z } from 'zod';

const environmentSchema = z.object({
  PORT: z.coerce
    .number('PORT must be a number from 0 to 65535.')
    .int('PORT must be a whole number.')
    .min(0, 'PORT must be 0 or more.')
    .max(65535, 'PORT must be 65535 or less.')
    .default(4170),
  HOST: z.string().min(1, 'HOST must name an address.').optional(),
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
/** `HOST`: the address listened on, this machine's own unless another is asked for. */
export type Environment = z.infer<typeof environmentSchema> & { readonly HOST: string };

/** The environment cannot be used; the message says which setting and why. */
export class EnvironmentUnusable extends Error {}

/** The settings that the server takes from its environment, and from the words behind `npm start --`. */
export function readEnvironment(
  environment: Readonly<Record<string, string | undefined>>,
  words: readonly string[] = [],
): Environment {
  const onNetwork = asksForNetwork(words);
  const read = environmentSchema.safeParse(environment);
  if (!read.success) throw new EnvironmentUnusable(read.error.issues.map(({ message }) => message).join(' '));
  return { ...read.data, HOST: read.data.HOST ?? (onNetwork ? '0.0.0.0' : '127.0.0.1') };
}

function asksForNetwork(words: readonly string[]): boolean {
  try {
    const { values } = parseArgs({ args: [...words], options: { network: { type: 'boolean' } } });
    return values.network ?? false;
  } catch {
    throw new EnvironmentUnusable(
      `"${words.join(' ')}" is not understood. "npm start" serves this machine only, "npm start -- --network" the home network too.`,
    );
  }
}
