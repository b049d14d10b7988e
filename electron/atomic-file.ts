import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { Refused } from './refused.ts';

/**
 * Write a whole file or none: what stood there before stays until the new one is complete, and when this returns both
 * the file and its name are on the disk. @throws Refused
 */
export function writeWhole(file: string, content: string | Uint8Array): void {
  const unfinished = `${file}.${process.pid}.part`;
  try {
    const descriptor = openSync(unfinished, 'w');
    try {
      const bytes = typeof content === 'string' ? Buffer.from(content) : content;
      for (let at = 0; at < bytes.length;) at += writeSync(descriptor, bytes, at);
      fsyncSync(descriptor);
    } finally {
      closeSync(descriptor);
    }
    renameSync(unfinished, file);
    syncFolder(dirname(file));
  } catch (error) {
    rmSync(unfinished, { force: true });
    if (error instanceof Error && 'code' in error)
      throw new Refused(
        'refused',
        `The file ${file} could not be written (${String(error.code)}). What stood there before is kept; choose another place, or make room on the disk.`,
      );
    throw error;
  }
}

/** A file that another program wrote, made sure of on the disk. */
export function syncFile(file: string): void {
  const descriptor = openSync(file, 'r+');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

/** Names of files are the folder's content: they are on the disk once it is. Windows does so by itself and has no call for it. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const descriptor = openSync(folder, 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
