import { existsSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { Command, InvalidArgumentError, Option } from 'commander';
import type { StandSheet } from '../../core/stand/known-stand.ts';
import type { StandOfTask } from '../measuring/measure-file.ts';
import { type LightSide, lightSideSchema } from '../schemas/stand.ts';

/** A photo to measure, as named on the command line. */
export interface PhotoArgument {
  readonly path: string;
  readonly turnDeg: number | null;
}

export interface MeasureArguments {
  readonly photos: readonly PhotoArgument[];
  /** The photos are the views of one sitting. */
  readonly turned: boolean;
  /** Where the light comes from, as seen from the camera; `null` when not told. */
  readonly lightSide: LightSide | null;
  readonly rimMm: number | null;
  readonly empty: string | null;
  readonly stand: StandOfTask;
  readonly form: 'table' | 'json' | 'csv';
  /** Folder for the masks. */
  readonly masks: string | null;
  /** Whether the trained network is heard. */
  readonly network: boolean;
}

/** Arguments that cannot be used; the message says what is wrong. */
export class UnusableArguments extends Error {}

interface Options {
  readonly rimMm?: number;
  readonly empty?: string;
  readonly stand?: string;
  readonly sheet?: StandSheet['paper'];
  readonly sheetPlace?: StandSheet['place'];
  readonly plantInFrontMm?: number;
  readonly cameraMm?: number;
  readonly json?: true;
  readonly csv?: true;
  readonly masks?: string;
  readonly turned?: true;
  readonly lightSide?: LightSide;
  readonly withoutNetwork?: true;
}

/** The command line as commander reads and explains it. */
export function measureCommand(): Command {
  return new Command('measure')
    .description('Measure the shape of pot plants on photos (JPEG, PNG, WebP or HEIC).')
    .usage('[options] PHOTO…')
    .argument('[photo...]', 'photos to measure; with --turned each as TURN=PHOTO')
    .option('--rim-mm <mm>', 'outer diameter of the pot rim in mm; without it sizes are in px', rimMm)
    .option('--empty <photo>', 'the same stand without the plant, same camera place')
    .option('--stand <photo>', 'bring the photos in line with this one of the same stand; else with --empty')
    .addOption(
      new Option('--sheet <paper>', 'a stand sheet is in sight, printed on').choices(['A4', 'Letter']),
    )
    .addOption(
      new Option(
        '--sheet-place <place>',
        'where the sheet is fixed (with --sheet; backdrop when left out)',
      ).choices(['backdrop', 'bench']),
    )
    .option(
      '--plant-in-front-mm <mm>',
      'how far the pot’s middle stands in front of the sheet; needed for one on the backdrop',
      millimetres('--plant-in-front-mm', 0, 3000, 150),
    )
    .option(
      '--camera-mm <mm>',
      'camera to the pot’s middle, if known',
      millimetres('--camera-mm', 200, 20_000, 1500),
    )
    .option('--json', 'print one line of JSON a photo')
    .option('--csv', 'print CSV, one row a photo')
    .option('--masks <folder>', 'write each cut-out as three grey pictures, see below')
    .option('--turned', 'the photos are one sitting: 0=a.jpg 45=b.jpg, turn in degrees')
    .addOption(
      new Option(
        '--light-side <side>',
        'where the light comes from, as seen from the camera (with --turned): says which way to turn the pot',
      ).choices(lightSideSchema.options),
    )
    .option('--without-network', 'cut the plant out without the trained network')
    .addHelpText(
      'after',
      `
Examples:
  npm run --silent measure -- --rim-mm 130 a.jpg b.jpg
  npm run --silent measure -- --rim-mm 130 --json --masks masks photos/*.jpg
  npm run --silent measure -- --empty empty.jpg --sheet A4 --plant-in-front-mm 150 photos/*.jpg
  npm run --silent measure -- --rim-mm 130 --turned 0=a.jpg 45=b.jpg 90=c.jpg 135=d.jpg
  npm run --silent measure -- --rim-mm 130 --turned --light-side left --camera-mm 1500 0=a.jpg 90=b.jpg

The turn is the azimuth that faces the camera: 0 at the mark on the pot, anticlockwise seen from above.
With --turned the views are joined into one plan of the plant; name them in the order taken.
With --masks, of the photo's size: NAME.canopy.png is 255 on the canopy, else 0; NAME.parts.png is 0 on the
background, 51 leaf and stem, 102 flower, 153 pot, 204 soil, 255 label or support; NAME.certainty.png goes from 0
where "canopy or not" was a coin's toss to 255 where it is certain.
The table's column "scale" says where millimetres come from: the stand sheet or the pot rim; under the table stands
how the camera stood against the photo of --stand or --empty.
Exit: 0 when every photo was read, measured or not; 2 on unusable arguments; 1 on a fault of the program.`,
    )
    .exitOverride()
    .configureOutput({ writeErr: () => {} });
}

/** Reads the arguments after the command's name. Throws `UnusableArguments`, or commander's own for --help. */
export function readArguments(words: readonly string[]): MeasureArguments {
  const command = measureCommand();
  command.parse([...words], { from: 'user' });
  const options = command.opts<Options>();
  const turned = options.turned === true;
  if (options.json && options.csv) throw new UnusableArguments('Give --json or --csv, not both.');
  if (turned && options.csv) {
    throw new UnusableArguments('A sitting has no CSV form. Give --json, or leave --csv out.');
  }
  if (options.lightSide !== undefined && !turned) {
    throw new UnusableArguments(
      '--light-side says how to turn the plant of a sitting: give it with --turned.',
    );
  }
  if (command.args.length === 0) throw new UnusableArguments('Name at least one photo.');
  const photos = command.args.map((word) => (turned ? turnedPhoto(word) : { path: word, turnDeg: null }));
  for (const path of [...photos.map((photo) => photo.path), ...(options.empty ? [options.empty] : [])]) {
    requireFile(path);
  }
  if (options.stand !== undefined) requireFile(options.stand);
  if (turned) requireDifferentTurns(photos);
  if (options.masks !== undefined) requireDifferentNames(photos);
  return {
    photos,
    turned,
    lightSide: options.lightSide ?? null,
    rimMm: options.rimMm ?? null,
    empty: options.empty ?? null,
    stand: {
      referencePath: options.stand ?? options.empty ?? null,
      sheet: sheetFrom(options),
      cameraDistanceMm: options.cameraMm ?? null,
    },
    form: options.json ? 'json' : options.csv ? 'csv' : 'table',
    masks: options.masks ?? null,
    network: options.withoutNetwork !== true,
  };
}

function rimMm(word: string): number {
  const value = Number(word);
  if (word.trim() !== '' && value >= 30 && value <= 1000) return value;
  throw new InvalidArgumentError('Give the rim in millimetres, from 30 to 1000, for example 130.');
}

/** Reads a length. The limits are those of the stand's form. */
function millimetres(option: string, least: number, most: number, example: number): (word: string) => number {
  return (word) => {
    const value = Number(word);
    if (word.trim() !== '' && value >= least && value <= most) return value;
    throw new InvalidArgumentError(
      `Give ${option} in millimetres, from ${least} to ${most}, for example ${example}.`,
    );
  };
}

function sheetFrom({ sheet, sheetPlace, plantInFrontMm }: Options): StandOfTask['sheet'] {
  if (sheet === undefined) {
    if (sheetPlace === undefined && plantInFrontMm === undefined) return null;
    throw new UnusableArguments('Say with --sheet A4 or --sheet Letter on which paper the stand sheet is.');
  }
  const place = sheetPlace ?? 'backdrop';
  if (place === 'backdrop' && plantInFrontMm === undefined) {
    throw new UnusableArguments(
      'A sheet on the backdrop lies farther than the plant: give --plant-in-front-mm, for example 150.',
    );
  }
  return { paper: sheet, place, plantInFrontMm: plantInFrontMm ?? 0 };
}

function turnedPhoto(word: string): PhotoArgument {
  const parts = /^(\d+(?:\.\d+)?)=(.+)$/.exec(word);
  const turnDeg = Number(parts?.[1]);
  if (!parts?.[2] || !(turnDeg < 360)) {
    throw new UnusableArguments(
      `With --turned give each photo its turn in degrees from 0 to 359, as in 45=${parts?.[2] ?? word}`,
    );
  }
  return { path: parts[2], turnDeg };
}

function requireFile(path: string): void {
  if (!existsSync(path)) throw new UnusableArguments(`There is no file ${path}`);
  if (!statSync(path).isFile()) throw new UnusableArguments(`${path} is a folder; name the photos in it.`);
}

function requireDifferentTurns(photos: readonly PhotoArgument[]): void {
  if (new Set(photos.map(({ turnDeg }) => turnDeg)).size < photos.length) {
    throw new UnusableArguments('Two photos of the sitting have the same turn. Give each its own.');
  }
}

/** Masks are named after their photo, so two photos of one name would fall on one mask. */
function requireDifferentNames(photos: readonly PhotoArgument[]): void {
  const names = photos.map(({ path }) => maskName(path));
  const twice = names.find((name, at) => names.indexOf(name) !== at);
  if (twice !== undefined) {
    throw new UnusableArguments(
      `Two photos would share the mask ${twice}. Rename one, or measure them one after the other.`,
    );
  }
}

/** File name of a photo's mask. */
export function maskName(path: string, of: 'canopy' | 'parts' | 'certainty' = 'canopy'): string {
  return `${basename(path).replace(/\.[^.]+$/, '')}.${of}.png`;
}
