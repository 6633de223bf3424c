import { flowerHeads, usualHeadSize } from '../../../core/bloom/flower-heads.ts';
import type { PlantKind } from '../../../core/plant.ts';
import type { PhotoReport } from '../../../core/report.ts';
import { changeSince } from '../../../core/trend/change-since.ts';
import { canopySize } from '../../../core/vigour/growth-rates.ts';
import { clockRunWords, thinRuns } from '../photo/thin-sectors.ts';
import type { MoreReading } from './extra-readings.ts';
import { plusMinusWords } from './reading.ts';

/** What a photo tells of the plant beside its shape, in the order of the page. */
export const PLANT_GROUPS = [
  { name: 'Leaf', measures: ['greenLeaf', 'yellowLeaf', 'brownLeaf'] },
  { name: 'Flower', measures: ['flowerHeads'] },
  { name: 'Gaps and light', measures: ['tightness', 'openBase'] },
  { name: 'Canopy', measures: ['canopyHeight', 'canopyWidth', 'canopyArea'] },
] as const satisfies readonly { name: string; measures: readonly string[] }[];
export type PlantMeasure = (typeof PLANT_GROUPS)[number]['measures'][number];

/** A share in % or a length, as far as a photo knows it. */
interface Told {
  readonly value: number;
  readonly plusMinus: number | null;
}

/** Takes one number out of a photo's report; `before` is the photo that changes are told from. */
export function readPlant(
  report: PhotoReport,
  before: PhotoReport | null,
  kind: PlantKind,
  measure: PlantMeasure,
): MoreReading {
  if (measure === 'flowerHeads') return headsReading(report, kind);
  const told = toldOf(report, measure);
  const unit = unitOf(measure);
  if (told === null) return { value: null, plusMinus: null, unit, aside: whyUnknown(report, measure) };
  const why = whyNotCompared(report, measure);
  return {
    value: told.value.toFixed(0),
    plusMinus: plusMinusWords(told.plusMinus),
    unit,
    aside: [
      placeWords(report, measure),
      offByWords(report, measure),
      why ?? changeWords(report, before, measure),
    ]
      .filter((words) => words !== null)
      .join('. '),
  };
}

function toldOf(report: PhotoReport, measure: Exclude<PlantMeasure, 'flowerHeads'>): Told | null {
  const percent = (share: { share: number; plusMinus: number } | undefined) =>
    share ? { value: 100 * share.share, plusMinus: 100 * share.plusMinus } : null;
  const { foliage, gaps } = report;
  switch (measure) {
    case 'greenLeaf':
      return percent(foliage?.green);
    case 'yellowLeaf':
      return percent(foliage?.yellow);
    case 'brownLeaf':
      return percent(foliage?.brown);
    case 'tightness':
      return percent(gaps ? { share: gaps.tightness, plusMinus: gaps.tightnessPlusMinus } : undefined);
    case 'openBase':
      return percent(gaps ? { share: gaps.openBase, plusMinus: gaps.openBasePlusMinus } : undefined);
    case 'canopyHeight':
    case 'canopyWidth':
    case 'canopyArea': {
      const size = canopySize(report);
      if (size === null) return null;
      const [value, power] = {
        canopyHeight: [size.heightMm, 1] as const,
        canopyWidth: [size.widthMm, 1] as const,
        canopyArea: [size.areaCm2, 2] as const,
      }[measure];
      return {
        value,
        plusMinus: size.plusMinusShare === null ? null : power * size.plusMinusShare * value,
      };
    }
  }
}

function headsReading({ flower }: PhotoReport, kind: PlantKind): MoreReading {
  if (!flower?.patchesMm2) {
    const aside = flower ? NEEDS_SCALE : NOT_READ;
    return { value: null, plusMinus: null, unit: '', aside };
  }
  const { least, most } = flowerHeads(flower.patchesMm2, usualHeadSize(kind));
  const value = least === most ? `${least}` : `${least}–${most}`;
  return { value, plusMinus: null, unit: '', aside: most === 0 ? null : 'as seen from this side' };
}

function unitOf(measure: PlantMeasure): string {
  if (measure === 'canopyArea') return 'cm²';
  return measure === 'canopyHeight' || measure === 'canopyWidth' ? 'mm' : '%';
}

/** How far the true share of a colour may lie from the one read, where that is much more than photos differ. */
function offByWords({ foliage }: PhotoReport, measure: PlantMeasure): string | null {
  const share = { yellowLeaf: foliage?.yellow, brownLeaf: foliage?.brown, greenLeaf: foliage?.green }[
    measure as string
  ];
  if (!share || share.offBy < 2 * share.plusMinus) return null;
  return `the true share may lie up to ${Math.round(100 * share.offBy)} % off`;
}

/** Where the yellow stands, where the canopy is thin. */
function placeWords({ foliage, gaps }: PhotoReport, measure: PlantMeasure): string | null {
  if (measure === 'yellowLeaf') {
    const places = [...new Set(foliage?.where.map(({ place }) => place))];
    return places.length === 0 ? null : places.join(', ');
  }
  if (measure !== 'tightness') return null;
  const runs = gaps ? thinRuns(gaps) : [];
  return runs.length === 0 ? null : `thin at ${runs.map(clockRunWords).join(' and ')}`;
}

/** Colours have a reason of their own why they are held against no other photo's; everything else has the photo's. */
function whyNotCompared({ foliage, notCompared }: PhotoReport, measure: PlantMeasure): string | null {
  const why = isLeafMeasure(measure) ? (notCompared ?? foliage?.notCompared ?? null) : notCompared;
  return why === null ? null : `Not compared: ${why}`;
}

function changeWords(report: PhotoReport, before: PhotoReport | null, measure: PlantMeasure): string | null {
  if (before === null || measure === 'flowerHeads' || whyNotCompared(before, measure) !== null) return null;
  const [now, then] = [toldOf(report, measure), toldOf(before, measure)];
  if (now?.plusMinus == null || then?.plusMinus == null) return null;
  if (isLeafMeasure(measure) && report.foliage?.against !== before.foliage?.against) return OTHER_NORMAL;
  const { direction } = changeSince(
    { value: then.value, plusMinus: then.plusMinus },
    { value: now.value, plusMinus: now.plusMinus },
  );
  if (direction === 'none') return 'no change';
  const by = now.value - then.value;
  return `${by > 0 ? '+' : '−'}${Math.abs(by).toFixed(0)} ${unitOf(measure)}`;
}

function isLeafMeasure(measure: PlantMeasure): boolean {
  return measure === 'greenLeaf' || measure === 'yellowLeaf' || measure === 'brownLeaf';
}

function whyUnknown({ gaps, flower, foliage }: PhotoReport, measure: PlantMeasure): string | null {
  switch (measure) {
    case 'greenLeaf':
    case 'yellowLeaf':
    case 'brownLeaf':
      return foliage ? null : 'The reason stands in the notes under the photo.';
    case 'flowerHeads':
      return flower ? null : NOT_READ;
    case 'tightness':
    case 'openBase':
      return gaps ? null : 'No ball was found to measure gaps in.';
    case 'canopyHeight':
    case 'canopyWidth':
    case 'canopyArea':
      return NEEDS_SCALE;
  }
}

const NOT_READ = 'Flower could not be told from leaf in this photo.';
const NEEDS_SCALE = 'It needs a scale: the pot rim’s measure, or the stand sheet in the picture.';
const OTHER_NORMAL = 'not compared: the plant’s normal leaf was learned in between';

export const PLANT_NAMES: Record<PlantMeasure, string> = {
  greenLeaf: 'Green leaf',
  yellowLeaf: 'Yellow leaf',
  brownLeaf: 'Brown leaf',
  flowerHeads: 'Flower heads seen',
  tightness: 'Tightness',
  openBase: 'Open base',
  canopyHeight: 'Canopy height',
  canopyWidth: 'Canopy width',
  canopyArea: 'Canopy area as seen',
};
