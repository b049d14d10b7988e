import type { Cell, Grid } from '../../core/import/grid.ts';
import { MOST } from '../../core/input-limits.ts';
import { quoted } from '../../core/quoted.ts';
import { Refused } from '../refused.ts';
import { checkSize, filledRows } from './csv.ts';
import { marksEnd } from './markup.ts';
import { BadZip, stored, unzip, type Parts } from './unzip.ts';
import { grouped } from '../../core/grouped.ts';

/** What a spreadsheet's cell can hold; of a formula what it came to. */
type CellValue = string | number | boolean | Date | null;

/**
 * Read one sheet of a spreadsheet (XLSX, ECMA-376). Numbers and dates are what the file says they are, whatever they look
 * like.
 * @param sheet the sheet's name; undefined: the first
 * @throws Refused with a sentence when it is damaged, too big, empty, or has no such sheet
 */
export async function readSpreadsheet(
  fileName: string,
  bytes: Uint8Array,
  sheet: string | undefined,
): Promise<Grid> {
  const refuse = (why: string): Refused =>
    new Refused(
      'bad-input',
      `${fileName} ${why}. Nothing was imported; save it again as a spreadsheet (.xlsx) or as CSV, and import that.`,
    );
  const sheets = await sheetsOf(partsOf(bytes, refuse), refuse);
  const names = sheets.map((one) => one.sheet);
  const chosen =
    sheet === undefined
      ? sheets.find(({ data }) => data.length > 0)
      : sheets.find((one) => one.sheet === sheet);
  if (!chosen)
    throw new Refused(
      'bad-input',
      sheet === undefined
        ? `${fileName} is empty. Nothing was imported; choose a file with a header row and one row a line.`
        : `${fileName} has no sheet ${quoted([sheet])}; it has ${quoted(names)}. Nothing was imported.`,
    );
  const rows = chosen.data.map((values, index) => ({ row: index + 1, cells: trimmed(values.map(cellOf)) }));
  checkSize(
    fileName,
    rows.map(({ cells }) => cells.map(({ text }) => text)),
  );
  const others = names.filter((name) => name !== chosen.sheet);
  const notes =
    others.length > 0
      ? [`The sheet “${chosen.sheet}” is read; ${quoted(others)} ${others.length === 1 ? 'is' : 'are'} not.`]
      : [];
  return { rows: filledRows(fileName, rows), notes, sheets: [chosen.sheet, ...others] };
}

function partsOf(bytes: Uint8Array, refuse: (why: string) => Refused): Parts {
  try {
    return unzip(bytes);
  } catch (error) {
    if (error instanceof BadZip) throw refuse(error.message);
    throw error;
  }
}

interface SheetRead {
  readonly sheet: string;
  readonly data: readonly (readonly CellValue[])[];
}

/** The reader is loaded when a spreadsheet comes. */
async function sheetsOf(parts: Parts, refuse: (why: string) => Refused): Promise<readonly SheetRead[]> {
  const trouble = [...parts]
    .map(([name, part]) => troubleOf(name, latin1Of(part)))
    .find((one) => one !== null);
  if (trouble) throw refuse(trouble);
  const { default: read } = await import('read-excel-file/universal');
  try {
    return (await read(stored(parts))) as readonly SheetRead[];
  } catch {
    // Whatever the reader stumbles over, the file is what is wrong: it was not made by a person here.
    throw refuse('cannot be read as a spreadsheet');
  }
}

const latin1Of = (part: Uint8Array): string =>
  Buffer.from(part.buffer, part.byteOffset, part.byteLength).toString('latin1');

/** What is wrong with a part, as the end of a sentence. */
function troubleOf(name: string, text: string): string | null {
  if (!marksEnd(text)) return 'is damaged';
  return name.includes('worksheets/') ? farCell(text) : null;
}

/** A sheet may name a cell far out: the reader would make all cells up to it. */
function farCell(text: string): string | null {
  for (const [, letters = '', digits = '', other = ''] of text.matchAll(
    /\sr\s*=\s*["'](?:([A-Za-z]*)(\d+)["']|([^"']*))/g,
  )) {
    if (other !== '' || digits === '') return 'has a cell whose place cannot be read';
    if (digits.length > 7 || Number(digits) > MOST.lines) return `has more than ${grouped(MOST.lines)} lines`;
    const column = [...letters.toUpperCase()].reduce(
      (sum, letter) => sum * 26 + letter.charCodeAt(0) - 64,
      0,
    );
    if (column > MOST.columns * 3)
      return `has a cell in column ${letters}; at most ${MOST.columns} columns can be read`;
  }
  return null;
}

/** Cells behind the last that holds something are none. */
function trimmed(cells: readonly Cell[]): Cell[] {
  const last = cells.findLastIndex(({ text }) => text !== '');
  return cells.slice(0, last + 1);
}

function cellOf(value: CellValue): Cell {
  if (value === null) return { text: '' };
  if (typeof value === 'string') return { text: value.trim() };
  if (typeof value === 'boolean') return { text: value ? 'yes' : 'no' };
  if (typeof value === 'number') return { text: String(value), number: value };
  return { text: wallText(value) };
}

/** A spreadsheet's dates have no zone: they are what the clock on the wall shows. */
function wallText(date: Date): string {
  if (!Number.isFinite(date.getTime())) return '';
  const [day = '', time = ''] = new Date(Math.round(date.getTime() / 60_000) * 60_000)
    .toISOString()
    .split('T');
  const clock = time.slice(0, 5);
  return clock === '00:00' ? day : `${day} ${clock}`;
}
