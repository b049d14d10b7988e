import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { troubleOf } from './db/trouble.ts';

/** Write a whole file or none: what stood there before stays until the new one is complete. @throws Refused */
export function writeWhole(file: string, content: string | Uint8Array): void {
  const unfinished = `${file}.${process.pid}.part`;
  try {
    writeFileSync(unfinished, content);
    renameSync(unfinished, file);
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw troubleOf(error, file) ?? error;
  }
}
