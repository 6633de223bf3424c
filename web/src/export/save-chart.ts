import { type ChartPaper, standaloneSvg } from './standalone-svg.ts';

export type ChartFormat = 'svg' | 'png';

/** Px of the picture for one of the screen: clear on paper as well. */
const PNG_SCALE = 2;

/** Saves the largest drawing in `place` as a file that stands alone. */
export async function saveChart(
  place: Element,
  format: ChartFormat,
  paper: Omit<ChartPaper, 'faces'>,
  fileName: string,
): Promise<void> {
  const chart = largestDrawing(place);
  if (chart === null) throw new Error('The chart is not drawn yet. Wait a moment and try again.');
  const svg = standaloneSvg(chart, { ...paper, faces: await embeddedFace() });
  const text = new XMLSerializer().serializeToString(svg);
  const file = new Blob([text], { type: 'image/svg+xml;charset=utf-8' });
  save(format === 'svg' ? file : await asPng(file, svg), `${fileName}.${format}`);
}

function largestDrawing(place: Element): SVGSVGElement | null {
  const area = (svg: SVGSVGElement) => {
    const { width, height } = svg.getBoundingClientRect();
    return width * height;
  };
  const drawings = [...place.querySelectorAll<SVGSVGElement>('svg')].sort((a, b) => area(b) - area(a));
  return drawings[0] && area(drawings[0]) > 0 ? drawings[0] : null;
}

async function asPng(svg: Blob, { width, height }: SVGSVGElement): Promise<Blob> {
  const address = URL.createObjectURL(svg);
  try {
    const picture = new Image();
    picture.src = address;
    await picture.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width.baseVal.value * PNG_SCALE;
    canvas.height = height.baseVal.value * PNG_SCALE;
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const png = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (png === null) throw new Error('The browser could not make the picture. Save it as SVG instead.');
    return png;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** The text face inside the file, so that it looks the same where the face is not at hand. */
async function embeddedFace(): Promise<string> {
  const { default: address } = await import(
    '@fontsource-variable/commissioner/files/commissioner-latin-wght-normal.woff2?url'
  );
  const answer = await fetch(address);
  if (!answer.ok) return '';
  const bytes = new Uint8Array(await answer.arrayBuffer());
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return `@font-face{font-family:'Commissioner Variable';font-weight:100 900;src:url(data:font/woff2;base64,${btoa(text)}) format('woff2')}`;
}

function save(file: Blob, fileName: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = fileName;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
