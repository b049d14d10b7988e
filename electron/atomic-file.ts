import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { Refused } from './refused.ts';

/** Write a whole file or none: what stood there before stays until the new one is complete. @throws Refused */
export function writeWhole(file: string, content: string | Uint8Array): void {
  const unfinished = `${file}.${process.pid}.part`;
  try {
    writeFileSync(unfinished, content);
    renameSync(unfinished, file);
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
