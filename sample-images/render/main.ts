import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import { PLANT_SEASONS } from './season/plants.ts';
import { seasonList } from './season/season-list.ts';
import { SHOWS } from './season/shows.ts';
import { FULL, SMALL } from './season/sitting-view.ts';
import { writePlant } from './season/write-plant.ts';
import { greenhouseScenery } from './stand/greenhouse.ts';
import { writeJson } from './write-photo.ts';

/** Renders the sample season into the folder above, or drafts of it elsewhere. */
const program = new Command('render-samples')
  .description('Renders the sample plants with their exact masks and truths.')
  .option('--only <key>', 'render one plant only')
  .option('--weeks <list>', 'render these weeks only, for example 0,7')
  .option('--small', 'quarter-size drafts')
  .option('--out <folder>', 'where to write', fileURLToPath(new URL('..', import.meta.url)))
  .action(async (options: { only?: string; weeks?: string; small?: boolean; out: string }) => {
    const seasons = PLANT_SEASONS.filter((season) => !options.only || season.key === options.only);
    if (seasons.length === 0) {
      const keys = PLANT_SEASONS.map((season) => season.key).join(', ');
      program.error(`There is no sample plant "${options.only}". Choose one of ${keys}.`);
    }
    await mkdir(options.out, { recursive: true });
    for (const season of seasons) {
      const every = Array.from({ length: season.sittings }, (_, week) => week);
      const weeks = options.weeks?.split(',').map(Number) ?? every;
      const scenery = season.stand.busy ? greenhouseScenery(season.stand.light, season.pot.heightMm) : null;
      const draft = options.small ? SMALL : FULL;
      await writePlant(
        season,
        options.out,
        draft,
        scenery,
        weeks.filter((week) => every.includes(week)),
        (line) => process.stdout.write(`${line}\n`),
      );
    }
    if (!options.only && !options.weeks)
      await writeJson(join(options.out, 'season.json'), seasonList(PLANT_SEASONS, SHOWS));
  });

await program.parseAsync();
