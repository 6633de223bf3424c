// What licences the shipped packages are under, and what holes are known in them: `npm run licences`, `-- --all` names every package.
// Ends with 1 when a licence is missing, unknown or not permissive beyond the ones told here, or a hole is known; with 3 when nobody could be asked for holes.
import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { knownHoles } from './known-holes.ts';
import { judged, shippedPackages } from './shipped-packages.ts';

const ROOT = join(import.meta.dirname, '../..');

const packages = shippedPackages(ROOT, JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')));
const byLicence = grouped();
for (const [licence, under] of [...byLicence].sort((a, b) => b[1].length - a[1].length)) {
  console.log(`${String(under.length).padStart(5)}  ${licence}`);
}
if (process.argv.includes('--all')) {
  for (const { name, version, licence } of packages)
    console.log(`${name} ${version}: ${licence ?? 'none told'}`);
}

const questions = packages.flatMap((one) => {
  const verdict = judged(one);
  return verdict.kind === 'permissive' ? [] : [{ ...one, ...verdict }];
});
console.log(`\n${packages.length} packages are shipped; of these not simply permissive: ${questions.length}`);
for (const { name, version, licence, kind, why } of questions) {
  console.log(
    `  ${kind === 'settled' ? 'settled ' : 'QUESTION'} ${name} ${version}: ${licence ?? 'none told'}. ${why}`,
  );
}
const open = questions.filter(({ kind }) => kind === 'open');

const holes = knownHoles(await auditAnswer());
console.log(`\nknown holes: ${holes.words}`);
process.exitCode = open.length > 0 || holes.state === 'found' ? 1 : holes.state === 'unknown' ? 3 : 0;

function grouped(): Map<string, typeof packages> {
  const groups = new Map<string, typeof packages>();
  for (const one of packages) {
    const licence = one.licence ?? 'none told';
    groups.set(licence, [...(groups.get(licence) ?? []), one]);
  }
  return groups;
}

/** What the registry answers on the shipped packages, as npm tells it; it ends with 1 when there are holes. */
function auditAnswer(): Promise<string> {
  return new Promise((resolve) => {
    execFile(
      'npm',
      ['audit', '--json', '--omit=dev'],
      { cwd: ROOT, timeout: 120_000, maxBuffer: 2 ** 26 },
      (_, printed) => resolve(printed),
    );
  });
}
