import type { PhotoReport } from '../../../core/report.ts';
import { clockRunWords, type ThinRun } from './thin-sectors.ts';

type YellowZone = NonNullable<PhotoReport['foliage']>['where'][number];

/** On the label of a zone of yellow leaf: its share of the leaf where that is worth a number. */
export function yellowLabel({ areaShare }: YellowZone): string {
  return areaShare < 0.005 ? 'yellow' : `yellow ${(100 * areaShare).toFixed(0)} %`;
}

/** What a zone of yellow leaf says when it is tapped. */
export function yellowTold({ place, areaShare }: YellowZone, { foliage }: PhotoReport): string {
  const size = areaShare < 0.005 ? 'under 1' : (100 * areaShare).toFixed(0);
  const against =
    foliage?.against === 'own'
      ? 'yellow beyond what is normal for this plant'
      : 'yellow by what is usual; this plant’s own leaf is not learned yet';
  return `Yellow leaf ${place}: ${size} % of the leaf seen, ${against}. It is a colour, not a cause: look before you clear it.`;
}

/** On the label of a thin place of the ball. */
export function thinLabel(run: ThinRun): string {
  return `thin, ${(100 * run.gapFraction).toFixed(0)} % open`;
}

/** What a thin place says when it is tapped. */
export function thinTold(run: ThinRun): string {
  return `Thin place at ${clockRunWords(run)}: up to ${(100 * run.gapFraction).toFixed(0)} % of the ball is open there, much more than round the rest. Seen from this side only.`;
}
