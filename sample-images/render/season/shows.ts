import type { SampleShow } from './season-spec.ts';

/** The shows of the season. Names, places, classes and limits are all made up. */
export const SHOWS: readonly SampleShow[] = [
  {
    name: 'Lantern Week Show',
    day: '2026-11-28',
    place: 'Hollin Reach, assembly room',
    rules: 'Staging from 7.30 to 9.30. Name of the variety on a white card.',
    classes: [
      {
        name: 'Class 4, one zonal in bloom',
        potMm: 150,
        widestMm: 450,
        tallestMm: null,
        rules: 'No supports to be seen.',
      },
    ],
    entries: [{ plant: 'porch-zonal', class: 'Class 4, one zonal in bloom' }],
  },
  {
    name: 'Dapple Quay Spring Show',
    day: '2027-05-29',
    place: 'Dapple Quay, the sail loft',
    rules: '',
    classes: [{ name: 'Class 11, one regal', potMm: 130, widestMm: null, tallestMm: null, rules: '' }],
    entries: [{ plant: 'greenhouse-regal', class: 'Class 11, one regal' }],
  },
  {
    name: 'Merrow Vale Pelargonium Day',
    day: '2027-06-12',
    place: 'Merrow Vale, the long barn',
    rules: 'Staging on the day before from 16.00. Plants are judged from all sides.',
    classes: [
      {
        name: 'Class 2, one regal',
        potMm: 140,
        widestMm: 380,
        tallestMm: null,
        rules: 'In the exhibitor’s hands for two months at the least.',
      },
      { name: 'Class 5, one angel', potMm: 115, widestMm: 300, tallestMm: 300, rules: '' },
    ],
    entries: [
      { plant: 'window-regal', class: 'Class 2, one regal' },
      { plant: 'corner-angel', class: 'Class 5, one angel' },
    ],
  },
  {
    name: 'Thornwick Summer Show',
    day: '2027-06-26',
    place: 'Thornwick, marquee on the green',
    rules: '',
    classes: [
      { name: 'Class 8, one pelargonium, any size', potMm: null, widestMm: null, tallestMm: null, rules: '' },
      { name: 'Class 9, one regal in a large pot', potMm: 160, widestMm: 500, tallestMm: null, rules: '' },
    ],
    entries: [
      { plant: 'old-regal', class: 'Class 9, one regal in a large pot' },
      { plant: 'window-regal', class: 'Class 8, one pelargonium, any size' },
    ],
  },
];
