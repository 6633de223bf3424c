/** Linear light, three numbers a px, row by row from the top-left corner. */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly light: Float32Array;
}

export function blankPicture(widthPx: number, heightPx: number): Picture {
  return { widthPx, heightPx, light: new Float32Array(3 * widthPx * heightPx) };
}

/** Blurs each band with a Gaussian, rows first and then columns; edges repeat. */
export function blurPicture(picture: Picture, sigmaPx: number): Picture {
  const weights = gaussianWeights(sigmaPx);
  const { widthPx, heightPx } = picture;
  const across = blurLines(picture.light, widthPx, heightPx, 3, widthPx * 3, weights);
  return { widthPx, heightPx, light: blurLines(across, heightPx, widthPx, widthPx * 3, 3, weights) };
}

function gaussianWeights(sigmaPx: number): number[] {
  const reach = Math.max(1, Math.ceil(sigmaPx * 3));
  const weights = Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigmaPx ** 2)),
  );
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

function blurLines(
  light: Float32Array,
  along: number,
  lines: number,
  step: number,
  lineStep: number,
  weights: readonly number[],
): Float32Array {
  const blurred = new Float32Array(light.length);
  const reach = (weights.length - 1) / 2;
  for (let line = 0; line < lines; line++) {
    for (let at = 0; at < along; at++) {
      let [red, green, blue] = [0, 0, 0];
      for (let tap = -reach; tap <= reach; tap++) {
        const from = line * lineStep + Math.min(along - 1, Math.max(0, at + tap)) * step;
        const weight = weights[tap + reach] as number;
        red += weight * (light[from] as number);
        green += weight * (light[from + 1] as number);
        blue += weight * (light[from + 2] as number);
      }
      const to = line * lineStep + at * step;
      blurred[to] = red;
      blurred[to + 1] = green;
      blurred[to + 2] = blue;
    }
  }
  return blurred;
}
