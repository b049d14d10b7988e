import type { Grid } from '../../core/import/grid.ts';
import { megabytes, MOST } from '../../core/input-limits.ts';
import { Refused } from '../refused.ts';
import { readText } from './csv.ts';
import { readSpreadsheet } from './spreadsheet.ts';

/**
 * A file's cells, whatever kind of file it is: CSV, semicolons, tabs, or a spreadsheet.
 * @param sheet of a spreadsheet; undefined: the first
 * @throws Refused with a sentence when it cannot be read or is too big
 */
export async function readGrid(fileName: string, bytes: Uint8Array, sheet?: string): Promise<Grid> {
  if (bytes.length > MOST.fileBytes)
    throw new Refused(
      'bad-input',
      `${fileName} has ${megabytes(bytes.length)}; at most ${megabytes(MOST.fileBytes)} can be read. Nothing was imported; split the file.`,
    );
  if (isZip(bytes)) return readSpreadsheet(fileName, bytes, sheet);
  if (isOldSpreadsheet(bytes))
    throw new Refused(
      'bad-input',
      `${fileName} is a spreadsheet of an older kind, or one locked with a password. Nothing was imported; save it as .xlsx or as CSV, and import that.`,
    );
  return readText(fileName, bytes);
}

const startsWith = (bytes: Uint8Array, mark: readonly number[]): boolean =>
  mark.every((byte, k) => bytes[k] === byte);
const isZip = (bytes: Uint8Array): boolean => startsWith(bytes, [0x50, 0x4b, 0x03, 0x04]);
/** Compound files: [MS-CFB] 2.2. */
const isOldSpreadsheet = (bytes: Uint8Array): boolean => startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0]);
