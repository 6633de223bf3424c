/** Rows and columns of cells, row by row. */
export interface CellMask {
  readonly width: number;
  readonly height: number;
  /** 1 inside, 0 outside. */
  readonly data: Uint8Array;
}

/** Larger than any squared distance on a picture. */
const FAR = 1e12;

/**
 * Distance of every cell's middle from the border, positive inside.
 *
 * @param mask at least one cell inside and one outside
 * @returns cells, row by row
 *
 * Notes: the border runs half-way between an inside and an outside cell, so half a cell is taken off both sides.
 *
 * Reference: Felzenszwalb and Huttenlocher (2012), Distance transforms of sampled functions, Theory of Computing 8:415–428.
 *
 * Example: one row 0 0 1 1 gives −1.5, −0.5, 0.5, 1.5.
 */
export function signedDistance(mask: CellMask): Float32Array {
  const toOutside = squaredDistanceTo(mask, 0);
  const toInside = squaredDistanceTo(mask, 1);
  const signed = new Float32Array(toOutside.length);
  for (let k = 0; k < signed.length; k++) {
    signed[k] =
      mask.data[k] === 1 ? Math.sqrt(toOutside[k] as number) - 0.5 : 0.5 - Math.sqrt(toInside[k] as number);
  }
  return signed;
}

/** Squared distance of each cell to the nearest cell of a value: all columns first, then all rows. */
function squaredDistanceTo({ width, height, data }: CellMask, value: 0 | 1): Float64Array {
  const squared = new Float64Array(width * height);
  for (let k = 0; k < squared.length; k++) squared[k] = data[k] === value ? 0 : FAR;
  const line = new Float64Array(Math.max(width, height));
  const work = envelopeWork(line.length);
  for (let x = 0; x < width; x++) {
    for (let y = 0; y < height; y++) line[y] = squared[y * width + x] as number;
    lowerEnvelope(line, height, work);
    for (let y = 0; y < height; y++) squared[y * width + x] = work.result[y] as number;
  }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) line[x] = squared[y * width + x] as number;
    lowerEnvelope(line, width, work);
    for (let x = 0; x < width; x++) squared[y * width + x] = work.result[x] as number;
  }
  return squared;
}

interface EnvelopeWork {
  /** Where each parabola of the envelope stands, and from where on it is the lowest. */
  readonly places: Int32Array;
  readonly from: Float64Array;
  readonly result: Float64Array;
}

function envelopeWork(length: number): EnvelopeWork {
  return {
    places: new Int32Array(length),
    from: new Float64Array(length + 1),
    result: new Float64Array(length),
  };
}

/** The lowest of the parabolas (x − k)² + line[k] at every x. */
function lowerEnvelope(line: Float64Array, length: number, { places, from, result }: EnvelopeWork): void {
  let last = 0;
  places[0] = 0;
  from[0] = Number.NEGATIVE_INFINITY;
  from[1] = Number.POSITIVE_INFINITY;
  for (let k = 1; k < length; k++) {
    let meets = meetingPlace(line, places[last] as number, k);
    while (meets <= (from[last] as number)) {
      last--;
      meets = meetingPlace(line, places[last] as number, k);
    }
    last++;
    places[last] = k;
    from[last] = meets;
    from[last + 1] = Number.POSITIVE_INFINITY;
  }
  for (let x = 0, at = 0; x < length; x++) {
    while ((from[at + 1] as number) < x) at++;
    const place = places[at] as number;
    result[x] = (x - place) ** 2 + (line[place] as number);
  }
}

function meetingPlace(line: Float64Array, before: number, after: number): number {
  return (
    ((line[after] as number) + after * after - (line[before] as number) - before * before) /
    (2 * (after - before))
  );
}
