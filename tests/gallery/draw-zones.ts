import { unsureWords } from '../../web/src/photo/outline-words.ts';
import { weakWords } from '../../web/src/photo/overlay-words.ts';
import { type Box, outlinePath } from '../../web/src/photo/points.ts';
import { weakSideOf } from '../../web/src/photo/weak-side.ts';
import { drawLabel } from './draw-label.ts';
import { layerGroup } from './layers.ts';
import { boxAttributes, px } from './markup.ts';
import type { Exhibit } from './measure-sample.ts';

/** What the canopy leaves open of the ball on its weak side, hatched and named; nothing on an even plant. */
export function weakLayer({ measured }: Exhibit, id: string, crop: Box, unitPx: number): string {
  const { report, outlinePx } = measured;
  const weak = weakSideOf(report);
  if (weak === null || report.ball === null) return '';
  const [cx, cy] = report.ball.centrePx;
  const aside = (weak.side === 'left' ? -1 : 1) * 48 * unitPx;
  return layerGroup(
    'weak',
    weakWords(report, weak.side),
    `<defs>${hatch(`${id}-weak`, 45, 'hatch', 0.32, 9 * unitPx)}<mask id="${id}-open">` +
      `<circle cx="${px(cx)}" cy="${px(cy)}" r="${px(report.ball.radiusPx)}" fill="#fff"/>` +
      `<path d="${outlinePath(outlinePx)}" fill="#000"/></mask></defs>` +
      `<rect ${boxAttributes(weak.half)} fill="url(#${id}-weak)" mask="url(#${id}-open)"/>` +
      drawLabel('weak side', [weak.label[0] + aside, weak.label[1]], crop, unitPx),
  );
}

/** The zones that may be leaf or not. */
export function unsureLayer({ measured }: Exhibit, id: string, unitPx: number): string {
  const zones = measured.report.unsure.map((zone) => {
    const d = outlinePath(zone.outlinePx);
    return (
      `<g><title>${unsureWords(zone)}</title><path d="${d}" fill="url(#${id}-unsure)"/>` +
      `<path d="${d}" class="unsureCasing"/><path d="${d}" class="unsureEdge"/></g>`
    );
  });
  if (zones.length === 0) return '';
  const defs = `<defs>${hatch(`${id}-unsure`, -45, 'unsure', 0.4, 8 * unitPx)}</defs>`;
  return layerGroup('unsure', 'Zones that may be leaf or not.', defs + zones.join(''));
}

function hatch(id: string, turnDeg: number, name: string, share: number, spacing: number): string {
  const bar = (width: number, part: string) =>
    `<rect width="${px(width)}" height="${px(spacing)}" class="${name}${part}"/>`;
  return (
    `<pattern id="${id}" width="${px(spacing)}" height="${px(spacing)}" patternUnits="userSpaceOnUse" ` +
    `patternTransform="rotate(${turnDeg})">${bar(spacing, 'Ground')}${bar(spacing * share, 'Line')}</pattern>`
  );
}
