/** What of an element's look is written into the file; all else is the same for every chart. */
const LOOK = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'visibility',
  'display',
  'color',
  'font-family',
  'font-size',
  'font-weight',
  'font-variant-numeric',
  'text-anchor',
  'dominant-baseline',
  'letter-spacing',
  'paint-order',
  'vector-effect',
  'white-space',
  'transform',
  'transform-origin',
  'transform-box',
] as const;

const PAGE_ONLY = ['class', 'tabindex', 'role', 'aria-label', 'aria-hidden'] as const;

export interface ChartPaper {
  readonly title: string;
  /** Lines under the chart: the days it holds, what its numbers stand for. */
  readonly lines: readonly string[];
  /** A style sheet with the faces, embedded. */
  readonly faces: string;
}

const MARGIN = 24;
const TITLE = { size: 22, room: 44 };
const LINE = { size: 14, pitch: 21 };
const NAMESPACE = 'http://www.w3.org/2000/svg';

/**
 * A chart as an SVG that stands alone: every style written into it, in the light shade whatever the screen's is, white behind,
 * the title above and the lines below.
 *
 * @param chart the drawn chart, in the page
 */
export function standaloneSvg(chart: SVGSVGElement, { title, lines, faces }: ChartPaper): SVGSVGElement {
  const { width, height } = chart.getBoundingClientRect();
  const { copy, ink, paperColour } = inLightShade(() => ({
    copy: styledCopy(chart),
    ink: token('--ink'),
    paperColour: token('--paper'),
  }));
  const wide = Math.ceil(width);
  const broken = lines.flatMap((line) => brokenLine(line, Math.floor(wide / (LINE.size * 0.5))));
  const below = broken.length > 0 ? 12 + broken.length * LINE.pitch : 0;
  const whole = { width: wide + 2 * MARGIN, height: Math.ceil(height) + TITLE.room + below + 2 * MARGIN };
  const paper = document.createElementNS(NAMESPACE, 'svg');
  paper.setAttribute('xmlns', NAMESPACE);
  paper.setAttribute('width', String(whole.width));
  paper.setAttribute('height', String(whole.height));
  paper.setAttribute('viewBox', `0 0 ${whole.width} ${whole.height}`);
  const style = document.createElementNS(NAMESPACE, 'style');
  style.textContent = faces;
  const named = document.createElementNS(NAMESPACE, 'title');
  named.textContent = title;
  paper.append(
    named,
    style,
    ground(whole, paperColour),
    words(title, MARGIN + TITLE.size, TITLE.size, 600, ink),
  );
  copy.setAttribute('x', String(MARGIN));
  copy.setAttribute('y', String(MARGIN + TITLE.room));
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  paper.append(copy);
  broken.forEach((line, at) => {
    const y = MARGIN + TITLE.room + Math.ceil(height) + 12 + (at + 0.8) * LINE.pitch;
    paper.append(words(line, y, LINE.size, 400, ink));
  });
  return paper;
}

function ground({ width, height }: { width: number; height: number }, colour: string): SVGElement {
  const rect = document.createElementNS(NAMESPACE, 'rect');
  rect.setAttribute('width', String(width));
  rect.setAttribute('height', String(height));
  rect.setAttribute('fill', colour);
  return rect;
}

function words(text: string, y: number, size: number, weight: number, colour: string): SVGElement {
  const line = document.createElementNS(NAMESPACE, 'text');
  line.setAttribute('x', String(MARGIN));
  line.setAttribute('y', String(y));
  line.setAttribute('font-size', String(size));
  line.setAttribute('font-weight', String(weight));
  line.setAttribute('font-family', "'Commissioner Variable', sans-serif");
  line.setAttribute('fill', colour);
  line.textContent = text;
  return line;
}

/** The value of a custom property of `tokens.css`. */
function token(name: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
}

/** Text does not break by itself in a drawing. */
function brokenLine(line: string, mostLetters: number): string[] {
  const rows: string[] = [];
  for (const word of line.split(' ')) {
    const row = rows.at(-1);
    if (row !== undefined && row.length + word.length < mostLetters) rows[rows.length - 1] = `${row} ${word}`;
    else rows.push(word);
  }
  return rows;
}

/** Reads styles as they are in the light shade. Nothing is painted between, so nothing flashes. */
function inLightShade<Value>(read: () => Value): Value {
  const root = document.documentElement;
  const shade = root.dataset.shade;
  root.dataset.shade = 'light';
  try {
    return read();
  } finally {
    if (shade === undefined) delete root.dataset.shade;
    else root.dataset.shade = shade;
  }
}

function styledCopy(chart: SVGSVGElement): SVGSVGElement {
  const copy = chart.cloneNode(true) as SVGSVGElement;
  const [from, to] = [
    [chart, ...chart.querySelectorAll('*')],
    [copy, ...copy.querySelectorAll('*')],
  ];
  from.forEach((element, at) => {
    const target = to[at];
    if (!(target instanceof SVGElement)) return;
    if (target instanceof SVGStyleElement) return;
    const look = getComputedStyle(element);
    const isMoved = target.hasAttribute('transform');
    const written = LOOK.map((name) => [name, look.getPropertyValue(name)] as const)
      .filter(([name, value]) => value !== '' && !(isMoved && name.startsWith('transform')))
      .map(([name, value]) => `${name}:${value}`);
    target.setAttribute('style', written.join(';'));
    // What the style says now stands once; its variables are known to the page alone.
    for (const name of [...LOOK, ...PAGE_ONLY]) if (name !== 'transform') target.removeAttribute(name);
  });
  return copy;
}
