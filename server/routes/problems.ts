import { STATUS_CODES } from 'node:http';
import type { ErrorRequestHandler, RequestHandler, Response } from 'express';
import { MulterError } from 'multer';
import type { Logger } from 'pino';
import type { ZodError, z } from 'zod';
import { MOST_BYTES } from '../intake/refused-photo.ts';
import type { Problem } from '../schemas/basics.ts';

type FieldFault = NonNullable<Problem['errors']>[number];

/** A request that cannot be done, with the sentence that says what to do. */
export class RequestProblem extends Error {
  readonly status: number;
  readonly errors: readonly FieldFault[];

  constructor(status: number, detail: string, errors: readonly FieldFault[] = []) {
    super(detail);
    this.status = status;
    this.errors = errors;
  }
}

/** What was sent, read by its schema; the faults point at the fields of the form. */
export function sent<T>(schema: z.ZodType<T>, value: unknown): T {
  if (value === undefined) {
    throw new RequestProblem(415, 'Send the fields as JSON, with the content type application/json.');
  }
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  throw fieldProblem(read.error);
}

function fieldProblem(fault: ZodError): RequestProblem {
  const errors = fault.issues.map((issue) => ({
    pointer: issue.path.map((part) => `/${String(part)}`).join(''),
    detail: issue.message,
  }));
  const first = errors[0];
  return new RequestProblem(422, first ? first.detail : 'The fields cannot be read.', errors);
}

/** What is looked up by id, or the problem that it is not there. `what` is its trade name: "plant". */
export function found<T>(what: string, value: T | null): T {
  if (value === null) throw noSuch(what);
  return value;
}

export function noSuch(what: string): RequestProblem {
  return new RequestProblem(404, `There is no such ${what}. It may have been removed; go back to the bench.`);
}

/** The one place where a request gone wrong becomes an RFC 9457 body. */
function sendProblem(response: Response, problem: RequestProblem, instance: string): void {
  const body: Problem = {
    type: 'about:blank',
    title: STATUS_CODES[problem.status] ?? 'Problem',
    status: problem.status,
    detail: problem.message,
    instance,
    ...(problem.errors.length > 0 ? { errors: [...problem.errors] } : {}),
  };
  response.status(problem.status).type('application/problem+json').send(JSON.stringify(body));
}

export const noSuchAddress: RequestHandler = (request) => {
  throw new RequestProblem(404, `There is nothing at ${request.method} ${request.baseUrl}${request.path}.`);
};

/** Answers every fault; one of our own is logged and says no more than that it happened. */
export function problemAnswers(log: Logger): ErrorRequestHandler {
  return (fault, request, response, next) => {
    if (response.headersSent) return next(fault);
    const problem = problemFor(fault);
    if (problem.status >= 500) log.error({ err: fault, path: request.path }, 'a request broke down');
    sendProblem(response, problem, request.originalUrl.split('?')[0] ?? request.path);
  };
}

/** What the system and the database say when there is no room left. */
const DISK_FULL = new Set(['ENOSPC', 'EDQUOT', 'SQLITE_FULL']);

function problemFor(fault: unknown): RequestProblem {
  if (fault instanceof RequestProblem) return fault;
  if (fault instanceof MulterError) return uploadProblem(fault);
  // body-parser, busboy and the router mark what the sender got wrong with a status.
  const { status, type, message, code } = fault as {
    status?: number;
    type?: string;
    message?: string;
    code?: string;
  };
  if (code !== undefined && DISK_FULL.has(code)) {
    return new RequestProblem(
      507,
      'The disk of Rondure’s machine is full, so nothing of this was kept. Make room there, then send it again.',
    );
  }
  if (code !== undefined && (code === 'EIO' || code.startsWith('SQLITE_IOERR'))) {
    return new RequestProblem(
      500,
      'The disk of Rondure’s machine could not be read or written, so nothing of this was kept. See to that disk, then try again.',
    );
  }
  if (type === 'entity.parse.failed') return new RequestProblem(400, 'The JSON that was sent is malformed.');
  if (type === 'entity.too.large') return new RequestProblem(413, 'That is more text than a form may hold.');
  if (/Multipart: |Unexpected end of form|Malformed part/.test(message ?? '')) {
    return new RequestProblem(400, 'The upload is incomplete or malformed. Send the photos again.');
  }
  if (typeof status === 'number' && status >= 400 && status < 500) {
    return new RequestProblem(status, `The request cannot be read: ${message ?? 'no reason given'}.`);
  }
  return new RequestProblem(500, 'The program broke down over this request. Nothing was lost; try again.');
}

function uploadProblem(fault: MulterError): RequestProblem {
  switch (fault.code) {
    case 'LIMIT_FILE_SIZE':
      return new RequestProblem(
        413,
        `A file is larger than ${MOST_BYTES / 1024 ** 2} MB, so nothing of this upload was kept. Send the photo as the camera took it.`,
      );
    case 'LIMIT_FILE_COUNT':
    case 'LIMIT_PART_COUNT':
      return new RequestProblem(
        413,
        'Those are too many files at once, so none was kept. Send them in parts.',
      );
    case 'LIMIT_UNEXPECTED_FILE':
      return new RequestProblem(
        400,
        `Files are not taken in the field "${fault.field ?? ''}", or not so many. See the upload's address for its field.`,
      );
    default:
      return new RequestProblem(400, `The upload cannot be read: ${fault.message}.`);
  }
}
