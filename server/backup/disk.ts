import { constants } from 'node:fs';
import { copyFile, link, mkdir, open, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { syncFolder } from '../store/photo-files.ts';

/** Writes a new file and has it on the disk; its folder is made. */
export async function writeNew(path: string, bytes: Uint8Array | string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, bytes, { flag: 'wx' });
  await syncFile(path);
}

/** Copies a file to a new one and has it on the disk. */
export async function copyNew(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  await copyFile(from, to, constants.COPYFILE_EXCL);
  await syncFile(to);
}

/** Gives a file a second name; `false` where the disk knows no such thing or the file is not there. */
export async function linked(from: string, to: string): Promise<boolean> {
  await mkdir(dirname(to), { recursive: true });
  return link(from, to).then(
    () => true,
    () => false,
  );
}

export async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Has folders' entries on the disk. */
export async function syncFolders(folders: Iterable<string>): Promise<void> {
  for (const folder of new Set(folders)) await syncFolder(folder);
}

/** Why work on a folder failed, for a grower. */
export function diskWords(fault: unknown, folder: string): string {
  const { code, message } = fault as NodeJS.ErrnoException;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
    case 'SQLITE_FULL':
      return `The disk of ${folder} is full. Make room there, or choose another folder.`;
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return `${folder} cannot be written by this user. Choose another folder, or give the right to write there.`;
    case 'ENOENT':
    case 'ENOTDIR':
      return `${folder} is not there. See that its disk is plugged in, or choose another folder.`;
    default:
      return `Work on ${folder} broke down (${code ?? message}). Try again, or choose another folder.`;
  }
}
