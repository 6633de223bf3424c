import type { PartsOutlines } from '../../core/silhouette/parts-outlines.ts';
import { axisWords, ballWords, OUTLINE_WORDS, PART_WORDS } from '../../web/src/photo/overlay-words.ts';
import { type Box, outlinePath } from '../../web/src/photo/points.ts';
import type { FormOfBall } from './form-of-ball.ts';
import { type Layer, layerGroup } from './layers.ts';
import { boxAttributes, px } from './markup.ts';
import type { Exhibit } from './measure-sample.ts';
import type { SampleTruth } from './sample-truth.ts';

/** Outline, form profile, minimum zone, ball, axis, rim and parts, each a layer; classes as the app's own overlay has them. */
export function lineLayers({ measured, form, truth }: Exhibit, id: string, crop: Box): [Layer, string][] {
  const { report, outlinePx, partsOutlines } = measured;
  const { axis } = report;
  const parts = Object.keys(partsOutlines) as (keyof PartsOutlines)[];
  return [
    ['truth', truth === null ? '' : trueLines(truth)],
    ['outline', layerGroup('outline', OUTLINE_WORDS, cased('outline', outlinePath(outlinePx)))],
    ['form', form === null ? '' : formLine(form)],
    ['zone', form === null ? '' : zoneCircles(form)],
    ['ball', ballLine(report, id, crop)],
    ['axis', axis === null ? '' : axisLines(report, axis, crop)],
    ['rim', axis?.rimEllipse ? rimLine(axis.rimEllipse) : ''],
    ...parts.map((part): [Layer, string] => {
      const path = partsOutlines[part].map((outline) => outlinePath(outline)).join('');
      return [part, layerGroup(part, PART_WORDS[part], cased('part', path, ` data-part="${part}"`))];
    }),
  ];
}

type Report = Exhibit['measured']['report'];
type Axis = NonNullable<Report['axis']>;

function cased(name: string, d: string, more = ''): string {
  return d === '' ? '' : `<path d="${d}" class="${name}Casing"/><path d="${d}" class="${name}"${more}/>`;
}

function formLine({ profilePx, closed }: FormOfBall): string {
  const path = outlinePath(profilePx);
  const words =
    'The form profile: the outline smoothed to 15 undulations a turn, where the pot leaves it open.';
  return layerGroup('form', words, cased('form', closed ? path : path.slice(0, -1)));
}

function zoneCircles({ zone }: FormOfBall): string {
  const [cx, cy] = zone.centre;
  const circle = (radius: number) =>
    ['zoneCasing', 'zone']
      .map((name) => `<circle cx="${px(cx)}" cy="${px(cy)}" r="${px(radius)}" class="${name}"/>`)
      .join('');
  const words = 'The tightest two circles about one centre that hold the form profile between them.';
  const middle = `<path d="M${px(cx - 9)} ${px(cy)}h18M${px(cx)} ${px(cy - 9)}v18" class="zone"/>`;
  return layerGroup('zone', words, circle(zone.innerRadius) + circle(zone.outerRadius) + middle);
}

/** Full where the canopy can be seen, broken below the rim, where the pot hides it. */
function ballLine(report: Report, id: string, crop: Box): string {
  const { ball, axis } = report;
  if (ball === null) return '';
  const [cx, cy] = ball.centrePx;
  const foot = crop.y + crop.height;
  const rimY = axis === null ? foot : Math.min((axis.rimLeftPx[1] + axis.rimRightPx[1]) / 2, foot);
  const circle = (name: string) =>
    `<circle cx="${px(cx)}" cy="${px(cy)}" r="${px(ball.radiusPx)}" class="${name}"/>`;
  const clip = (name: string, y: number, height: number) =>
    `<clipPath id="${id}-${name}"><rect ${boxAttributes({ ...crop, y, height })}/></clipPath>`;
  return layerGroup(
    'ball',
    ballWords(report),
    `<defs>${clip('seen', crop.y, rimY - crop.y)}${clip('hidden', rimY, foot - rimY)}</defs>` +
      `<g clip-path="url(#${id}-seen)">${circle('ballCasing')}${circle('ball')}</g>` +
      `<g clip-path="url(#${id}-hidden)">${circle('ball ballHidden')}</g>`,
  );
}

function axisLines(report: Report, axis: Axis, crop: Box): string {
  const [left, right] = [axis.rimLeftPx, axis.rimRightPx];
  const d =
    `M${px(axis.xPx)} ${px(crop.y)}V${px(crop.y + crop.height)}` +
    `M${px(left[0])} ${px(left[1])}L${px(right[0])} ${px(right[1])}`;
  const lines = ['axisCasing', 'axis'].map((name) => `<g class="${name}"><path d="${d}"/></g>`).join('');
  return layerGroup('axis', axisWords(report), lines);
}

function rimLine({ centrePx: [cx, cy], halfWidthPx, halfHeightPx }: NonNullable<Axis['rimEllipse']>): string {
  const place = `cx="${px(cx)}" cy="${px(cy)}" rx="${px(halfWidthPx)}" ry="${px(halfHeightPx)}"`;
  const words = 'The rim as a level ellipse: how far it opens to the view.';
  return layerGroup('rim', words, `<ellipse ${place} class="rimCasing"/><ellipse ${place} class="rim"/>`);
}

function trueLines({ outlinePx, built }: SampleTruth): string {
  const tips = built.stems
    .filter(({ long }) => long)
    .map(({ tipPx: [x, y] }) => `M${px(x - 12)} ${px(y - 12)}l24 24m0 -24l-24 24`);
  return layerGroup(
    'truth',
    'The true outline, and a cross on each shoot that was made to outgrow the ball.',
    `<path d="${outlinePath(outlinePx)}" class="truth"/>` +
      (tips.length === 0 ? '' : `<path d="${tips.join('')}" class="truthTip"/>`),
  );
}
