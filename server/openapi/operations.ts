import type { SchemaName } from './schemas.ts';

/** One address and method of the interface. Bodies are JSON unless told otherwise. */
export interface Operation {
  readonly method: 'get' | 'post' | 'put' | 'patch' | 'delete';
  readonly path: string;
  readonly summary: string;
  readonly sends?: SchemaName;
  /** Multipart field of the photos that are sent, and the schema of the text fields beside them. */
  readonly sendsPhotos?: { readonly field: string; readonly many: boolean; readonly beside?: SchemaName };
  readonly query?: readonly { readonly name: string; readonly values?: readonly string[] }[];
  readonly status: 200 | 201 | 202 | 204;
  readonly answers?: SchemaName;
  /** Content type of an answer that is not JSON. */
  readonly answersType?: string;
}

const PAPERS = [{ name: 'paper', values: ['A4', 'Letter'] }] as const;
const PICTURE_WIDTHS = [{ name: 'width', values: ['320', '800', '1600'] }] as const;

export const OPERATIONS: readonly Operation[] = [
  {
    method: 'get',
    path: '/bench',
    summary: 'Every plant, the neediest first',
    status: 200,
    answers: 'Bench',
  },
  {
    method: 'post',
    path: '/plants',
    summary: 'Add a plant',
    sends: 'PlantForm',
    status: 201,
    answers: 'Plant',
  },
  { method: 'get', path: '/plants/{id}', summary: 'All of one plant', status: 200, answers: 'PlantPage' },
  {
    method: 'patch',
    path: '/plants/{id}',
    summary: 'Change a plant; a new rim diameter lets its photos be measured anew',
    sends: 'PlantChange',
    status: 200,
    answers: 'Plant',
  },
  {
    method: 'post',
    path: '/plants/{id}/photos',
    summary: 'Add photos; those of one day share a sitting',
    sendsPhotos: { field: 'photos', many: true, beside: 'UploadForm' },
    status: 202,
    answers: 'Upload',
  },
  {
    method: 'get',
    path: '/plants/{id}/empty-photo',
    summary: 'The upright copy of the empty stand’s photo, without camera data',
    query: PICTURE_WIDTHS,
    status: 200,
    answersType: 'image/jpeg',
  },
  {
    method: 'put',
    path: '/plants/{id}/empty-photo',
    summary: 'Give the photo of the empty stand; the plant’s photos are measured anew against it',
    sendsPhotos: { field: 'photo', many: false },
    status: 200,
    answers: 'Plant',
  },
  {
    method: 'delete',
    path: '/plants/{id}/empty-photo',
    summary: 'Measure without a photo of the empty stand',
    status: 200,
    answers: 'Plant',
  },
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
    method: 'patch',
    path: '/sittings/{id}',
    summary: 'Say on which stand a sitting was taken; its photos are measured anew',
    sends: 'SittingChange',
    status: 200,
    answers: 'Sitting',
  },
  { method: 'get', path: '/views/{id}', summary: 'One photo and its report', status: 200, answers: 'View' },
  {
    method: 'patch',
    path: '/views/{id}',
    summary: 'Change a photo’s day or turn; a new day moves it to that day’s sitting',
    sends: 'ViewChange',
    status: 200,
    answers: 'View',
  },
  { method: 'delete', path: '/views/{id}', summary: 'Remove a photo; it can be brought back', status: 204 },
  {
    method: 'post',
    path: '/views/{id}/restore',
    summary: 'Bring a removed photo back',
    status: 200,
    answers: 'View',
  },
  {
    method: 'post',
    path: '/views/{id}/measure',
    summary: 'Measure a photo anew',
    status: 202,
    answers: 'View',
  },
  {
    method: 'put',
    path: '/views/{id}/strokes',
    summary: 'Give all strokes of a photo; it is cut and measured anew before the answer',
    sends: 'StrokesForm',
    status: 200,
    answers: 'View',
  },
  {
    method: 'post',
    path: '/views/{id}/warm',
    summary: 'Make a photo ready, so that its first stroke is answered quickly',
    status: 204,
  },
  {
    method: 'put',
    path: '/views/{id}/accepted',
    summary:
      'Say whether the outline is right; a right one teaches the plant’s colours, and later photos are measured anew',
    sends: 'AcceptedForm',
    status: 200,
    answers: 'View',
  },
  {
    method: 'get',
    path: '/views/{id}/picture',
    summary: 'The upright copy of a photo, without camera data',
    query: PICTURE_WIDTHS,
    status: 200,
    answersType: 'image/jpeg',
  },
  {
    method: 'get',
    path: '/views/{id}/mask',
    summary: 'The canopy, white on clear',
    status: 200,
    answersType: 'image/png',
  },
  {
    method: 'post',
    path: '/plants/{id}/stops',
    summary: 'Add a stop',
    sends: 'StopForm',
    status: 201,
    answers: 'Stop',
  },
  {
    method: 'patch',
    path: '/stops/{id}',
    summary: 'Change a stop',
    sends: 'StopChange',
    status: 200,
    answers: 'Stop',
  },
  { method: 'delete', path: '/stops/{id}', summary: 'Remove a stop; it can be brought back', status: 204 },
  {
    method: 'post',
    path: '/stops/{id}/restore',
    summary: 'Bring a removed stop back',
    status: 200,
    answers: 'Stop',
  },
  {
    method: 'post',
    path: '/plants/{id}/notes',
    summary: 'Add a note',
    sends: 'NoteForm',
    status: 201,
    answers: 'Note',
  },
  {
    method: 'patch',
    path: '/notes/{id}',
    summary: 'Change a note',
    sends: 'NoteChange',
    status: 200,
    answers: 'Note',
  },
  { method: 'delete', path: '/notes/{id}', summary: 'Remove a note; it can be brought back', status: 204 },
  {
    method: 'post',
    path: '/notes/{id}/restore',
    summary: 'Bring a removed note back',
    status: 200,
    answers: 'Note',
  },
  {
    method: 'get',
    path: '/events',
    summary: 'Server-sent events named progress, each with a Progress as its data',
    status: 200,
    answers: 'Progress',
    answersType: 'text/event-stream',
  },
  { method: 'post', path: '/sample/put-away', summary: 'Put the sample plants away', status: 204 },
  { method: 'post', path: '/sample/bring-back', summary: 'Bring the sample plants back', status: 204 },
  { method: 'get', path: '/openapi.json', summary: 'This description', status: 200 },
];
