import type { FlowerLook, LeafLook, PlantSpec } from '../plant/plant-spec.ts';
import type { PotSpec } from '../stand/pot.ts';
import type { PlantSeason } from './season-spec.ts';
import { BLACK_CLOTH, BLUE_SHEET, GREENHOUSE, GREY_CLOTH, PALE_SWEEP } from './stands.ts';

const REGAL_LEAF: LeafLook = {
  radiusMm: 30,
  lobing: 0.075,
  toothing: 0.05,
  ruffle: 0.06,
  zone: 0,
  colour: [0.062, 0.122, 0.028],
  youngColour: [0.15, 0.25, 0.045],
};

const ZONAL_LEAF: LeafLook = {
  radiusMm: 33,
  lobing: 0.05,
  toothing: 0.035,
  ruffle: 0.045,
  zone: 0.85,
  colour: [0.07, 0.135, 0.032],
  youngColour: [0.15, 0.25, 0.05],
};

const ANGEL_LEAF: LeafLook = {
  radiusMm: 20,
  lobing: 0.12,
  toothing: 0.06,
  ruffle: 0.08,
  zone: 0,
  colour: [0.055, 0.112, 0.03],
  youngColour: [0.14, 0.23, 0.05],
};

const NO_FLOWER: FlowerLook | null = null;

const BUSH: PlantSpec = {
  seed: 1,
  radiusMm: [
    [-14, 30],
    [0, 105],
    [13, 150],
  ],
  centreHeight: 0.55,
  lowestDeg: -32,
  shoots: 70,
  forks: 18,
  internodeMm: 11,
  leaf: REGAL_LEAF,
  flower: NO_FLOWER,
  leanMm: [[0, 0]],
  leanAzimuthDeg: 90,
  longShoots: [],
  deepStop: null,
};

const CLAY_POT: PotSpec = {
  rimMm: 130,
  heightMm: 115,
  material: 'clay',
  colour: [0.36, 0.15, 0.075],
  mark: 'dot',
  labelDeg: null,
  seed: 5,
};

const BLACK_POT: PotSpec = { ...CLAY_POT, material: 'plastic', colour: [0.018, 0.018, 0.019] };

/** Five plants, each with a story that a grower meets. All names, varieties and days are made up. */
export const PLANT_SEASONS: readonly PlantSeason[] = [
  {
    key: 'window-regal',
    name: 'Window regal',
    kind: 'regal',
    variety: 'Vellum Drift',
    showDay: '2027-06-12',
    firstDay: '2026-08-23',
    sittings: 14,
    turned: new Map([
      [7, [0, 45, 90, 135]],
      [13, [0, 45, 90, 135]],
    ]),
    stops: [],
    notes: [
      { day: '2026-08-23', text: 'Moved to the window sill, glass on its right.' },
      { day: '2026-10-11', text: 'Leans to the glass. From today the other side faces the light.' },
      { day: '2026-11-15', text: 'Standing even again; a quarter turn every Sunday from now on.' },
    ],
    turns: [
      { day: '2026-08-23', facesLightDeg: 90 },
      { day: '2026-10-11', facesLightDeg: 270 },
      { day: '2026-11-15', facesLightDeg: 0 },
      { day: '2026-11-22', facesLightDeg: 90 },
    ],
    plant: {
      ...BUSH,
      seed: 11,
      radiusMm: [
        [-14, 30],
        [0, 103],
        [13, 148],
      ],
      leanMm: [
        [0, 3],
        [3, 22],
        [6, 50],
        [7, 54],
        [8, 49],
        [11, 15],
        [13, 1],
      ],
    },
    pot: CLAY_POT,
    stand: GREY_CLOTH,
  },
  {
    key: 'corner-angel',
    name: 'Corner angel',
    kind: 'angel',
    variety: 'Thimble Weather',
    showDay: '2027-06-12',
    firstDay: '2026-09-20',
    sittings: 10,
    turned: new Map(),
    stops: [
      {
        day: '2026-11-01',
        depth: 'tip',
        note: 'Tips of the long ones taken out after the photo, down to the ball.',
      },
    ],
    notes: [
      { day: '2026-10-18', text: 'Three shoots are running away from the rest.' },
      { day: '2026-11-08', text: 'Even all over after the stop.' },
    ],
    turns: [],
    plant: {
      ...BUSH,
      seed: 27,
      leaf: ANGEL_LEAF,
      internodeMm: 8,
      shoots: 92,
      forks: 22,
      radiusMm: [
        [-14, 30],
        [0, 108],
        [9, 128],
      ],
      centreHeight: 0.56,
      longShoots: [
        {
          azimuthDeg: 118,
          elevationDeg: 44,
          excessMm: [
            [1, 0],
            [6, 58],
            [6.6, 0],
          ],
        },
        {
          azimuthDeg: 268,
          elevationDeg: 28,
          excessMm: [
            [2, 0],
            [6, 40],
            [6.6, 0],
          ],
        },
        {
          azimuthDeg: 330,
          elevationDeg: 78,
          excessMm: [
            [2, 0],
            [6, 30],
            [6.6, 0],
          ],
        },
      ],
    },
    pot: { ...BLACK_POT, rimMm: 110, heightMm: 98, mark: 'stick', seed: 9 },
    stand: BLACK_CLOTH,
  },
  {
    key: 'old-regal',
    name: 'Old regal',
    kind: 'regal',
    variety: 'Umber Parade',
    showDay: '2027-06-26',
    firstDay: '2026-09-06',
    sittings: 12,
    turned: new Map(),
    stops: [{ day: '2026-09-20', depth: 'deep', note: 'Every stem back to its last fork after the photo.' }],
    notes: [
      { day: '2026-09-20', text: 'Kept dry for a week before and after the stop.' },
      { day: '2026-10-11', kind: 'seen-breaks', text: 'First ones showing at the joints.' },
      { day: '2026-11-22', text: 'In full leaf; room for one tip stop after the new year.' },
    ],
    turns: [],
    plant: {
      ...BUSH,
      seed: 43,
      radiusMm: [
        [-14, 60],
        [0, 146],
        [3, 152],
      ],
      shoots: 66,
      deepStop: {
        week: 2.2,
        restWeeks: 2,
        radiusMm: [
          [2, 62],
          [4.5, 84],
          [11, 138],
        ],
      },
    },
    pot: { ...CLAY_POT, rimMm: 150, heightMm: 132, mark: 'dot', labelDeg: 62, seed: 15 },
    stand: PALE_SWEEP,
  },
  {
    key: 'porch-zonal',
    name: 'Porch zonal',
    kind: 'zonal',
    variety: 'Tarn and Tinsel',
    showDay: '2026-11-28',
    firstDay: '2026-08-23',
    sittings: 14,
    turned: new Map(),
    stops: [{ day: '2026-08-09', depth: 'tip', note: 'Last stop, all shoots on the one day.' }],
    notes: [
      { day: '2026-10-04', text: 'First buds seen.' },
      { day: '2026-10-25', text: 'Buds colouring.' },
      { day: '2026-11-01', kind: 'first-flower', text: '' },
      { day: '2026-11-22', text: 'All heads open, six days before the show.' },
    ],
    turns: [],
    plant: {
      ...BUSH,
      seed: 58,
      leaf: ZONAL_LEAF,
      radiusMm: [
        [-14, 40],
        [0, 108],
        [9, 142],
        [13, 147],
      ],
      flower: {
        petalMm: 16,
        floretsPerTruss: 14,
        ruffle: 0.025,
        pedicel: 0.95,
        colour: [0.6, 0.055, 0.05],
        blotch: [0.4, 0.02, 0.03],
        share: 0.5,
        stage: [
          [5, 0],
          [9, 0.8],
          [13, 2.3],
        ],
      },
    },
    pot: {
      ...CLAY_POT,
      material: 'plastic',
      colour: [0.055, 0.13, 0.06],
      rimMm: 140,
      heightMm: 122,
      mark: 'dot',
      seed: 22,
    },
    stand: BLUE_SHEET,
  },
  {
    key: 'greenhouse-regal',
    name: 'Greenhouse regal',
    kind: 'regal',
    variety: 'Quiet Ferry',
    showDay: '2027-05-29',
    firstDay: '2026-09-20',
    sittings: 10,
    turned: new Map(),
    stops: [{ day: '2026-09-06', depth: 'tip', note: 'Second tip stop, all shoots.' }],
    notes: [
      {
        day: '2026-09-20',
        text: 'Photographed where it stands, among the others; the bench was cleared once for an empty photo.',
      },
    ],
    turns: [],
    plant: {
      ...BUSH,
      seed: 71,
      leaf: { ...REGAL_LEAF, radiusMm: 27, colour: [0.07, 0.135, 0.028] },
      radiusMm: [
        [-14, 30],
        [0, 98],
        [9, 134],
      ],
      shoots: 62,
    },
    pot: {
      ...CLAY_POT,
      material: 'plastic',
      colour: [0.62, 0.61, 0.58],
      rimMm: 120,
      heightMm: 106,
      mark: 'stick',
      labelDeg: 300,
      seed: 31,
    },
    stand: GREENHOUSE,
  },
];
