import type { Operation } from './operation.ts';

/** The door of the home network. Only the first two are open to a device that is not let in. */
export const PHONE_OPERATIONS: readonly Operation[] = [
  {
    method: 'get',
    path: '/door',
    summary: 'Where the asking device stands: at the desk, let in, or outside',
    status: 200,
    answers: 'Door',
  },
  {
    method: 'post',
    path: '/phones',
    summary: 'Come in with the code that the desk shows; the answer sets the cookie that is the key',
    sends: 'PhoneForm',
    status: 204,
  },
  {
    method: 'get',
    path: '/phones',
    summary: 'At the desk: the phones that are let in, and the addresses to open on another',
    status: 200,
    answers: 'PhoneList',
  },
  {
    method: 'post',
    path: '/phones/code',
    summary: 'At the desk: show a code, good once and for ten minutes',
    status: 201,
    answers: 'DoorCode',
  },
  { method: 'delete', path: '/phones/{id}', summary: 'At the desk: let a phone out', status: 204 },
  {
    method: 'post',
    path: '/phones/{id}/restore',
    summary: 'At the desk: let it in again',
    status: 204,
  },
];
