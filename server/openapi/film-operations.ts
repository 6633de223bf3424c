import type { Operation } from './operation.ts';

export const FILM_OPERATIONS: readonly Operation[] = [
  {
    method: 'post',
    path: '/plants/{id}/films',
    summary: 'Begin to make a plant’s film as a file; one is made at a time',
    sends: 'FilmForm',
    status: 202,
    answers: 'Film',
  },
  {
    method: 'get',
    path: '/films/{id}',
    summary: 'How far a film has come; it is kept for a quarter of an hour',
    status: 200,
    answers: 'Film',
  },
  {
    method: 'get',
    path: '/films/{id}/file',
    summary: 'The film as an animated WebP or GIF, without camera data',
    status: 200,
    answersType: 'image/webp',
  },
];
