import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { asRefused, withEverything } from './everything.ts';
import { exhibitId } from './exhibit-article.ts';
import { LAYERS, type Layer } from './layers.ts';
import { type Exhibit, measureSample } from './measure-sample.ts';
import { numbersIn } from './number-rows.ts';
import { galleryPage } from './page.ts';
import { SAMPLES, samplePhotos } from './sample-photos.ts';
import type { SampleTruth } from './sample-truth.ts';

/** One with long stems and four views, one in bloom, one in a busy place with an empty photo. */
const SHOWN = [
  'window-regal/2026-10-11-turn090.jpg',
  'porch-zonal/2026-11-01.jpg',
  'greenhouse-regal/2026-10-04.jpg',
];
const NEVER_SHOWN = /\b(NaN|undefined|Infinity|null)\b|\[object/;

let exhibits: Exhibit[] = [];
let page = '';

beforeAll(async () => {
  const chosen = (await samplePhotos()).filter(({ file }) => SHOWN.includes(file));
  exhibits = [];
  for (const sample of chosen) exhibits.push(await measureSample(sample));
  page = await galleryPage(exhibits);
}, 120_000);

/** What the page says, without its pictures, styles and script. */
function saidIn(html: string): string {
  return html
    .replace(/data:image\/jpeg;base64,[\w+/=]+/g, 'PICTURE')
    .replace(/<(style|script)>[\s\S]*?<\/\1>/g, '');
}

function articleOf(html: string, exhibit: Exhibit): string {
  const found = saidIn(html)
    .split('<article ')
    .find((part) => part.startsWith(`id="${exhibitId(exhibit)}"`));
  if (found === undefined) throw new RangeError(`The page has no article of ${exhibit.sample.file}`);
  return found.slice(0, found.indexOf('</article>'));
}

function layersIn(article: string): string[] {
  return [...article.matchAll(/data-layer="(\w+)"/g)].map((match) => match[1] as string).sort();
}

/** The cells of the page's tables by path: full value, words, plus-minus, truth, difference. */
function cellsIn(article: string) {
  const pattern =
    /<data value="([^"]+)" data-path="([^"]+)">([^<]+)<\/data>(?: <span class="plus-minus" data-value="([^"]+)">± ([^<]+)<\/span>)?<\/td><td(?: data-truth="([^"]+)">([^<]+))?.*?<\/td><td[^>]*>([^<]*)/g;
  return new Map(
    [...article.matchAll(pattern)].map((match) => {
      const [, value, path = '', words, plusMinus, , truth, truthWords, off] = match;
      return [
        path,
        { value: Number(value), words, plusMinus, truth, truthWords: truthWords?.trim(), off: off?.trim() },
      ];
    }),
  );
}

describe('the gallery of the sample plants', () => {
  it('shows each photo once, with its picture, status and place in the index', () => {
    expect(exhibits.map(({ sample }) => sample.file).sort()).toEqual([...SHOWN].sort());
    for (const exhibit of exhibits) {
      const article = articleOf(page, exhibit);
      expect(article).toContain('href="PICTURE"');
      expect(article).toContain('data-status="measured"');
      expect(page).toContain(`href="#${exhibitId(exhibit)}"`);
      expect(page).toContain(`href="#${exhibit.sample.plant.key}"`);
    }
  });

  it('says nothing that is no number or no word', () => {
    expect(saidIn(page)).not.toMatch(NEVER_SHOWN);
  });

  it('needs no other file', () => {
    const links = [...saidIn(page).matchAll(/(?:href|src)="([^"]*)"/g)].map((match) => match[1] as string);
    expect(links.filter((link) => link !== 'PICTURE' && !link.startsWith('#'))).toEqual([]);
    expect(page).not.toMatch(/@import|url\((?!#)/);
  });

  it('names nothing twice', () => {
    const ids = [...saidIn(page).matchAll(/\sid="([^"]+)"/g)].map((match) => match[1] as string);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
  });

  it('draws just what the report tells of', () => {
    for (const exhibit of exhibits) {
      const { report, partsOutlines } = exhibit.measured;
      const wanted: Record<Layer, boolean> = {
        weak: report.lopsidedness !== null && report.lopsidedness.side !== 'even',
        truth: true,
        outline: true,
        form: true,
        zone: true,
        ball: true,
        axis: true,
        rim: report.axis?.rimEllipse != null,
        pot: partsOutlines.pot.length > 0,
        soil: partsOutlines.soil.length > 0,
        support: partsOutlines.support.length > 0,
        flower: partsOutlines.flower.length > 0,
        unsure: report.unsure.length > 0,
        cuts: report.longStems.length > 0,
      };
      const layers = Object.keys(wanted).filter((layer) => wanted[layer as Layer]);
      expect(layersIn(articleOf(page, exhibit)), exhibit.sample.file).toEqual(layers.sort());
    }
  });

  it('draws every layer where there is one of everything, and can switch each off', async () => {
    const full = withEverything(exhibits[0] as Exhibit);
    const fullPage = await galleryPage([full]);
    const article = articleOf(fullPage, full);
    expect(layersIn(article)).toEqual(Object.keys(LAYERS).sort());
    expect(saidIn(fullPage)).not.toMatch(NEVER_SHOWN);
    for (const layer of Object.keys(LAYERS)) expect(fullPage).toContain(`id="show-${layer}" checked`);
    expect(article).toContain('>weak side<');
    expect(article).toContain('>70 px<');
    expect(article).toContain('about 60 % leaf, 1600 px², counted as canopy');
    expect(article).toContain('Leaves &lt; 3 &amp; &quot;more&quot; hide the rim.');
  });

  it('gives every number of the report, none left out, none changed', () => {
    for (const exhibit of exhibits) {
      const cells = cellsIn(articleOf(page, exhibit));
      const said = new Map<string, number>();
      for (const [path, { value, plusMinus }] of cells) {
        said.set(path, value);
        if (plusMinus !== undefined) said.set(`${path} ±`, Number(plusMinus));
      }
      const numbers = [...numbersIn(exhibit.measured.report).values()].sort((a, b) => a - b);
      expect(numbers.length).toBeGreaterThan(20);
      expect([...said.values()].sort((a, b) => a - b)).toEqual(numbers);
      const { roundness, ball, lopsidedness } = exhibit.measured.report;
      expect(said.get('roundness.score')).toBe(roundness?.score);
      expect(said.get('roundness.score ±')).toBe(roundness?.plusMinus);
      expect(said.get('lopsidedness.percent ±')).toBe(lopsidedness?.plusMinus);
      expect(said.get('ball.radiusMm ±')).toBe(ball?.radiusPlusMinusMm);
    }
  });

  it('words each number as it is, and its difference from the truth', () => {
    for (const exhibit of exhibits) {
      const cells = [...cellsIn(articleOf(page, exhibit)).values()];
      const plain = (words = '') => Number(words.replace('−', '-'));
      for (const { value, words, truth, truthWords, off } of cells) {
        const tolerance = 0.51 * 10 ** -(words?.split('.')[1]?.length ?? 0);
        expect(Math.abs(plain(words) - value)).toBeLessThan(tolerance);
        if (truth === undefined) continue;
        expect(Math.abs(plain(truthWords) - Number(truth))).toBeLessThan(tolerance);
        expect(Math.abs(plain(off) - (value - Number(truth)))).toBeLessThan(tolerance);
      }
      expect(cells.filter(({ truth }) => truth !== undefined).length).toBeGreaterThan(12);
    }
  });

  it('holds scale and size against what the plant was built to', () => {
    for (const exhibit of exhibits) {
      const file = join(SAMPLES, exhibit.sample.file.replace('.jpg', '.truth.json'));
      const built = JSON.parse(readFileSync(file, 'utf8')) as SampleTruth['built'];
      const cells = cellsIn(articleOf(page, exhibit));
      expect(Number(cells.get('scale.mmPerPx')?.truth)).toBe(built.mmPerPx);
      expect(Number(cells.get('ball.radiusMm')?.truth)).toBe(built.ball?.radiusMm);
      expect(Number(cells.get('canopy.heightMm')?.truth)).toBe(built.canopy.heightMm);
    }
  });

  it('draws the very circles that roundness and out of round were read from', () => {
    for (const { form, measured, sample } of exhibits) {
      const { innerRadius, outerRadius } = form?.zone ?? { innerRadius: 0, outerRadius: 0 };
      const { roundness, ball } = measured.report;
      expect((100 * innerRadius) / outerRadius, sample.file).toBeCloseTo(roundness?.score ?? 0, 6);
      expect(outerRadius - innerRadius, sample.file).toBeCloseTo(ball?.outOfRoundPx ?? 0, 6);
    }
  });

  it('shows a photo that was not measured with what to do, and no numbers', async () => {
    const hint = 'The photo is too dark. Turn on a lamp & photograph it again.';
    const refused = asRefused(exhibits[0] as Exhibit, hint);
    const article = articleOf(await galleryPage([refused]), refused);
    expect(article).toContain('data-status="too-dark"');
    expect(article).toContain('Turn on a lamp &amp; photograph');
    expect(article).not.toContain('<table');
    expect(layersIn(article)).toEqual([]);
    expect(article).not.toMatch(NEVER_SHOWN);
  });
});
