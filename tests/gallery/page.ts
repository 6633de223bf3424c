import { readFile } from 'node:fs/promises';
import { kindAndVariety } from '../../web/src/words/plant-words.ts';
import { exhibitArticle } from './exhibit-article.ts';
import { LAYERS } from './layers.ts';
import { escaped } from './markup.ts';
import type { Exhibit } from './measure-sample.ts';
import { dayLinks, summaryTable } from './summary-table.ts';

/** The app's own colours and line styles, so that what is drawn here looks as it does there. */
const STYLES = [
  '../../web/src/style/tokens.css',
  '../../web/src/photo/Overlay.module.css',
  './gallery.css',
].map((path) => new URL(path, import.meta.url));

/** Follows the device's shade until the button is pressed. */
const SHADE_SCRIPT = `
const wish = matchMedia('(prefers-color-scheme: dark)');
const shade = (dark) => { document.documentElement.dataset.shade = dark ? 'dark' : 'light'; };
shade(wish.matches);
wish.addEventListener('change', () => shade(wish.matches));
document.querySelector('#shade').addEventListener('click', () =>
  shade(document.documentElement.dataset.shade !== 'dark'));`;

/** The whole gallery as one HTML file that needs no other. */
export async function galleryPage(exhibits: readonly Exhibit[]): Promise<string> {
  const byPlant = plantByPlant(exhibits);
  const styles = await Promise.all(STYLES.map((url) => readFile(url, 'utf8')));
  const sections: string[] = [];
  for (const [key, shownOfPlant] of byPlant) sections.push(await plantSection(key, shownOfPlant));
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>Rondure gallery</title><style>${styles.join('\n')}${switchRules()}</style></head><body>
<header class="top"><h1>Gallery of the sample plants</h1><button id="shade" type="button">Light or dark</button>
${summaryTable(byPlant)}</header>
${switches()}
<main>${sections.join('\n')}</main><script>${SHADE_SCRIPT}</script></body></html>
`;
}

function plantByPlant(exhibits: readonly Exhibit[]): Map<string, Exhibit[]> {
  const byPlant = new Map<string, Exhibit[]>();
  for (const exhibit of exhibits) {
    const { key } = exhibit.sample.plant;
    byPlant.set(key, [...(byPlant.get(key) ?? []), exhibit]);
  }
  return byPlant;
}

async function plantSection(key: string, exhibits: readonly Exhibit[]): Promise<string> {
  const plant = exhibits[0]?.sample.plant;
  if (plant === undefined) throw new RangeError(`Expected photos of ${key} but received none`);
  const rim = plant.rimMm === null ? 'rim not known' : `rim ${plant.rimMm} mm`;
  const articles: string[] = [];
  for (const exhibit of exhibits) articles.push(await exhibitArticle(exhibit));
  return (
    `<section id="${key}"><h2>${escaped(plant.name)}</h2><p>${escaped(kindAndVariety(plant))}, ${rim}.</p>` +
    `${dayLinks(exhibits)}${articles.join('\n')}</section>`
  );
}

function switches(): string {
  const boxes = Object.entries(LAYERS).map(
    ([layer, words]) =>
      `<label><input type="checkbox" id="show-${layer}" checked><i data-sample="${layer}"></i>${words}</label>`,
  );
  return `<details class="switches"><summary>Drawn on the photos</summary><div>${boxes.join('')}</div></details>`;
}

/** A layer whose box is not ticked is not drawn; no script is needed for it. */
function switchRules(): string {
  return Object.keys(LAYERS)
    .map((layer) => `body:has(#show-${layer}:not(:checked)) [data-layer="${layer}"]{display:none}`)
    .join('\n');
}
