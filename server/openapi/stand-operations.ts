import type { Operation } from './operation.ts';
import { PICTURE_WIDTHS } from './picture-widths.ts';

const PAPERS = [{ name: 'paper', values: ['A4', 'Letter'] }] as const;

/** Stands, and what is printed for them and for the pots. */
export const STAND_OPERATIONS: readonly Operation[] = [
  {
    method: 'get',
    path: '/stands',
    summary: 'Every stand, those put away last',
    status: 200,
    answers: 'StandList',
  },
  {
    method: 'post',
    path: '/stands',
    summary: 'Set up a stand',
    sends: 'NewStand',
    status: 201,
    answers: 'Stand',
  },
  {
    method: 'get',
    path: '/stands/{id}',
    summary: 'One stand with its history',
    status: 200,
    answers: 'Stand',
  },
  {
    method: 'patch',
    path: '/stands/{id}',
    summary:
      'Change a stand. Once photos were taken on it a new version begins, and earlier sittings keep theirs; with sinceDay those from that day on are measured anew against the new one',
    sends: 'StandChange',
    status: 200,
    answers: 'Stand',
  },
  {
    method: 'post',
    path: '/stands/{id}/put-away',
    summary: 'Put a stand away; new photos of its plants are then taken without it',
    status: 200,
    answers: 'Stand',
  },
  {
    method: 'post',
    path: '/stands/{id}/bring-back',
    summary: 'Bring a stand back that was put away',
    status: 200,
    answers: 'Stand',
  },
  {
    method: 'get',
    path: '/stands/{id}/empty-photo',
    summary: 'The upright copy of the stand’s empty photo, without camera data',
    query: PICTURE_WIDTHS,
    status: 200,
    answersType: 'image/jpeg',
  },
  {
    method: 'get',
    path: '/stands/{id}/empty-photo/{photo}',
    summary: 'The same under a name of its own for each photo, as emptyPhoto.url gives it',
    query: PICTURE_WIDTHS,
    status: 200,
    answersType: 'image/jpeg',
  },
  {
    method: 'put',
    path: '/stands/{id}/empty-photo',
    summary:
      'Give the stand’s empty photo: new photos are cut out against it and brought in line with it; the answer says whether it is good',
    sendsPhotos: { field: 'photo', many: false },
    status: 200,
    answers: 'Stand',
  },
  {
    method: 'delete',
    path: '/stands/{id}/empty-photo',
    summary: 'Go on without an empty photo; earlier sittings keep theirs',
    status: 200,
    answers: 'Stand',
  },
  {
    method: 'get',
    path: '/stands/{id}/overlay',
    summary: 'What lies over the live picture: the stand’s frame, and the last silhouette of a plant',
    query: [{ name: 'plant' }],
    status: 200,
    answers: 'StandOverlay',
  },
  {
    method: 'get',
    path: '/stand-sheet.svg',
    summary: 'The stand sheet to print, in true size',
    query: PAPERS,
    status: 200,
    answersType: 'image/svg+xml',
  },
  {
    method: 'get',
    path: '/stand-sheet.pdf',
    summary: 'The stand sheet to print, in true size',
    query: PAPERS,
    status: 200,
    answersType: 'application/pdf',
  },
  {
    method: 'get',
    path: '/turn-collar.svg',
    summary: 'The turn collar to print to a pot’s rim, in true size',
    query: [{ name: 'rimMm' }, ...PAPERS],
    status: 200,
    answersType: 'image/svg+xml',
  },
  {
    method: 'get',
    path: '/turn-collar.pdf',
    summary: 'The turn collar to print to a pot’s rim, in true size',
    query: [{ name: 'rimMm' }, ...PAPERS],
    status: 200,
    answersType: 'application/pdf',
  },
];
