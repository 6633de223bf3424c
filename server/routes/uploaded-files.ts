import { randomUUID } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Request, RequestHandler } from 'express';
import multer from 'multer';
import type { ArrivedFile } from '../intake/receive-photo.ts';
import { MOST_BYTES } from '../intake/refused-photo.ts';
import { sentFileSchema } from '../schemas/sent-file.ts';
import type { DataHome } from '../store/data-home.ts';
import { RequestProblem, sent } from './problems.ts';

/** A file of an upload as it lies in `incoming`, with what its sender told; nothing is known about it yet. */
export interface UploadedFile extends ArrivedFile {
  readonly fileName: string;
}

/** Longest file name kept, letters; the name is for reading only and never a path. */
const LONGEST_NAME = 120;

export interface UploadAnswer {
  readonly status: number;
  readonly body: object;
}

/**
 * Streams the files of one multipart field to disk and hands them on. What the handler does not move away is
 * deleted before the answer is sent, also when the handler fails.
 */
export function withUploadedFiles(
  home: DataHome,
  { field, most }: { readonly field: string; readonly most: number },
  handle: (files: readonly UploadedFile[], request: Request) => Promise<UploadAnswer>,
): RequestHandler[] {
  const begun = new WeakMap<Request, string[]>();
  const storage = multer.diskStorage({
    destination: home.incoming,
    filename: (request, _file, done) => {
      const name = `${randomUUID()}.upload`;
      begun.set(request, [...(begun.get(request) ?? []), name]);
      done(null, name);
    },
  });
  const upload = multer({
    storage,
    limits: { fileSize: MOST_BYTES, files: most, fields: 10 + 2 * most, fieldSize: 10_000 },
    defParamCharset: 'utf8',
  });
  const takeIn: RequestHandler = (request, response, next) => {
    upload.array(field, most)(request, response, async (fault?: unknown) => {
      if (fault !== undefined) await sweep(request);
      next(fault);
    });
  };
  /** A file that broke off for want of room is left behind by the library. */
  async function sweep(request: Request): Promise<void> {
    const names = begun.get(request) ?? [];
    await Promise.allSettled(names.map((name) => rm(join(home.incoming, name), { force: true })));
  }
  return [
    takeIn,
    async (request, response) => {
      const files = (request.files ?? []) as Express.Multer.File[];
      let answer: UploadAnswer;
      try {
        if (files.length === 0) {
          throw new RequestProblem(
            400,
            `No photo was sent. Send it as multipart/form-data in the field "${field}".`,
          );
        }
        const told = toldOf(files.length, request);
        const arrived = files.map((file, at) => ({
          path: file.path,
          fileName: readableName(file.originalname),
          ...told[at],
        }));
        answer = await handle(arrived, request);
      } finally {
        // What cannot be deleted now is swept at the next start; it is no reason to call a kept photo refused.
        await Promise.allSettled(files.map((file) => rm(file.path, { force: true })));
      }
      response.status(answer.status).json(answer.body);
    },
  ];
}

/** Length and SHA-256 of each file as its sender told them. */
function toldOf(count: number, request: Request): Pick<ArrivedFile, 'sha256' | 'byteCount'>[] {
  const told = sent(sentFileSchema, request.body ?? {});
  const sha256 = eachOf(count, 'sha256', told.sha256);
  const byteCount = eachOf(count, 'byteCount', told.byteCount);
  return Array.from({ length: count }, (_, at) => ({
    sha256: sha256?.[at] ?? null,
    byteCount: byteCount ? Number(byteCount[at]) : null,
  }));
}

function eachOf(count: number, field: string, value: string | string[] | undefined): string[] | null {
  const values = [value ?? []].flat();
  if (values.length === 0) return null;
  if (values.length === count) return values;
  throw new RequestProblem(422, `Give “${field}” once for each photo, in the order of the photos.`);
}

/** The sender's file name without folders and unprintable letters. */
function readableName(name: string): string {
  const last = name.split(/[\\/]/).at(-1) ?? '';
  const printable = last.replace(/\p{C}/gu, '').trim();
  return printable.slice(-LONGEST_NAME) || 'photo';
}
