import { beforeAll, describe, expect, it } from 'vitest';
import { flowerOdds } from '../../../core/canopy/flower-odds.ts';
import type { PixelShares } from '../../../core/canopy/model/pixel-shares.ts';
import { sharesOf } from '../../../core/canopy/model/pixel-shares.ts';
import { yellowPlaces } from '../../../core/canopy/yellow-petals.ts';
import { type OpenCvDoor, openOpenCv } from '../../../core/opencv/door.ts';
import type { LabPicture } from '../../../core/raster/lab.ts';

const SIDE = 40;
type Lab = readonly [l: number, a: number, b: number];
/** CIE L*a*b* under D65 of sRGB #E8C81E, #A07028, #3C6E28 and #6B5A3C, by the formulas of IEC 61966-2-1 and CIE 15, rounded. */
const YELLOW: Lab = [81.0, -3.8, 78.1];
const BRONZE: Lab = [50.9, 12.2, 45.6];
const LEAF_GREEN: Lab = [41.6, -30.9, 33.1];
const DEAD_LEAF: Lab = [39.2, 2.3, 19.9];

let door: OpenCvDoor;
beforeAll(async () => {
  door = await openOpenCv();
});

function painted([l, a, b]: Lab): LabPicture {
  const plane = (value: number) => new Float32Array(SIDE * SIDE).fill(value);
  return { width: SIDE, height: SIDE, l: plane(l), a: plane(a), b: plane(b) };
}

/** What the network holds, by how likely a place is flower. */
function held(flowerAt: (at: number) => number): PixelShares {
  return sharesOf(SIDE, SIDE, (kind) =>
    Float32Array.from({ length: SIDE * SIDE }, (_, at) =>
      kind === 'flower' ? flowerAt(at) : kind === 'foliage' ? 1 - flowerAt(at) : 0,
    ),
  );
}

function oddsInMiddle(colour: Lab, shares: PixelShares): number {
  const picture = painted(colour);
  const { logOdds } = flowerOdds(picture, { shares, yellow: yellowPlaces(door, picture, shares) });
  return logOdds[(SIDE / 2) * SIDE + SIDE / 2] as number;
}

describe('a yellow place', () => {
  it.each([{ colour: YELLOW }, { colour: BRONZE }])(
    'is petal or leaf as the network has it, its colour aside: $colour',
    ({ colour }) => {
      expect(
        oddsInMiddle(
          colour,
          held(() => 0.75),
        ),
      ).toBeGreaterThan(1);
      expect(
        oddsInMiddle(
          colour,
          held(() => 0.1),
        ),
      ).toBeLessThan(-1);
    },
  );

  it('goes by its patch: a single px that the network sees otherwise does not stand alone', () => {
    const middle = (SIDE / 2) * SIDE + SIDE / 2;
    expect(
      oddsInMiddle(
        YELLOW,
        held((at) => (at === middle ? 0.02 : 0.9)),
      ),
    ).toBeGreaterThan(1);
  });

  it('asks none of its neighbours that are not yellow', () => {
    const shares = held((at) => (at % SIDE < SIDE / 2 ? 0.9 : 0.02));
    const [yellow, green] = [painted(YELLOW), painted(LEAF_GREEN)];
    const left = (at: number) => at % SIDE < SIDE / 2;
    const plane = (of: 'l' | 'a' | 'b') =>
      yellow[of].map((value, at) => (left(at) ? value : (green[of][at] as number)));
    const picture = { width: SIDE, height: SIDE, l: plane('l'), a: plane('a'), b: plane('b') };
    const { share, logOdds } = yellowPlaces(door, picture, shares);
    const row = (SIDE / 2) * SIDE;
    expect(logOdds[row + SIDE / 2 - 1]).toBeCloseTo(logOdds[row + 5] as number, 4);
    expect(share[row + SIDE / 2]).toBe(0);
  });
});

it.each([{ colour: LEAF_GREEN }, { colour: DEAD_LEAF }])(
  'leaf green and dead leaf are no yellow places: $colour',
  ({ colour }) => {
    expect(
      yellowPlaces(
        door,
        painted(colour),
        held(() => 0.9),
      ).share.every((share) => share < 0.2),
    ).toBe(true);
  },
);
