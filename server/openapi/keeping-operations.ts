import type { Operation } from './operation.ts';

/** Backups, checks and restoring, at the desk only. */
export const KEEPING_OPERATIONS: readonly Operation[] = [
  {
    method: 'get',
    path: '/keeping',
    summary: 'At the desk: the backups, when the next is due, what is under way, what the last check found',
    status: 200,
    answers: 'Keeping',
  },
  {
    method: 'put',
    path: '/keeping/plan',
    summary: 'At the desk: how often backups are made, how many stay, and where',
    sends: 'BackupPlanForm',
    status: 200,
    answers: 'Keeping',
  },
  {
    method: 'post',
    path: '/keeping/backups',
    summary: 'At the desk: begin a backup',
    status: 202,
    answers: 'Keeping',
  },
  {
    method: 'post',
    path: '/keeping/check',
    summary: 'At the desk: begin to read the whole store, or a whole backup, against its SHA-256 sums',
    sends: 'CheckForm',
    status: 202,
    answers: 'Keeping',
  },
  {
    method: 'post',
    path: '/keeping/backups/{name}/restore',
    summary: 'At the desk: begin to lay a backup out; when it is whole it takes the store’s place',
    status: 202,
    answers: 'Keeping',
  },
  {
    method: 'get',
    path: '/keeping/remeasuring',
    summary: 'At the desk: photos measured by an older method, and how far they are measured anew',
    status: 200,
    answers: 'Remeasuring',
  },
  {
    method: 'post',
    path: '/keeping/remeasuring/start',
    summary: 'At the desk: measure them anew, or go on, behind everything else; progress comes as events too',
    status: 202,
    answers: 'Remeasuring',
  },
  {
    method: 'post',
    path: '/keeping/remeasuring/stop',
    summary:
      'At the desk: stop measuring anew after the photo under way; each photo keeps its numbers, old or new',
    status: 200,
    answers: 'Remeasuring',
  },
];
