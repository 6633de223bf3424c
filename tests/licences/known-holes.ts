import { z } from 'zod';

const auditSchema = z.object({
  metadata: z.object({ vulnerabilities: z.record(z.string(), z.number()) }),
  vulnerabilities: z.record(z.string(), z.object({ severity: z.string(), range: z.string() })),
});
const refusalSchema = z.object({ message: z.string() });

/** What is known of holes; `unknown` is never taken for none. */
export interface KnownHoles {
  readonly state: 'none' | 'found' | 'unknown';
  readonly words: string;
}

/** Reads what `npm audit --json` printed. */
export function knownHoles(printed: string): KnownHoles {
  const answer = parsed(printed);
  const audit = auditSchema.safeParse(answer);
  if (!audit.success) {
    const refusal = refusalSchema.safeParse(answer);
    const why = refusal.success ? refusal.data.message : 'it printed nothing that can be read';
    return {
      state: 'unknown',
      // The address of a registry may hold a name and a password.
      words: `nobody could be asked. npm audit said: ${why.replaceAll(/\S+:\/\/\S+/g, '(the registry)')}. Ask again where a registry answers.`,
    };
  }
  const found = Object.entries(audit.data.vulnerabilities);
  if (found.length === 0) return { state: 'none', words: 'none, by npm audit.' };
  const lines = found.map(([name, { severity, range }]) => `  ${severity} in ${name} ${range}`);
  return { state: 'found', words: `${found.length}, by npm audit.\n${lines.join('\n')}` };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
