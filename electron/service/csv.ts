import Papa from 'papaparse';
import { hasUnkeepable, megabytes, MOST } from '../../core/input-limits.ts';
import { Refused } from '../refused.ts';

/** A file's cells as text, in the file's own order. Rows are counted as in the file; the header is row 1. */
export interface Table {
  readonly header: readonly string[];
  readonly rows: readonly { readonly row: number; readonly cells: readonly string[] }[];
}

const SEPARATORS = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;
type Separator = keyof typeof SEPARATORS;

/**
 * Read a CSV file: its encoding, its separator, its cells. Rows shorter than the header are filled with ''.
 * @throws Refused with a sentence when it is empty, no text, too big, or a quotation mark is never closed
 */
export function readTable(fileName: string, bytes: Uint8Array): { table: Table; notes: string[] } {
  if (bytes.length > MOST.csvBytes)
    throw new Refused(
      'bad-input',
      `${fileName} has ${megabytes(bytes.length)}; at most ${megabytes(MOST.csvBytes)} can be read. Nothing was imported; split the file.`,
    );
  const { text: written, notes } = decodeText(fileName, bytes);
  // Files pasted together have line ends of both kinds.
  const text = written.replaceAll(/\r\n?/g, '\n');
  const separator = guessSeparator(text);
  if (separator !== ',') notes.push(`The cells are separated by ${SEPARATORS[separator]}.`);
  const { data, errors } = Papa.parse<string[]>(text, {
    delimiter: separator,
    newline: '\n',
    header: false,
    skipEmptyLines: false,
    preview: MOST.lines + 1,
  });
  checkSize(fileName, data);
  const unclosed = errors.find((error) => error.code === 'MissingQuotes');
  if (unclosed)
    throw new Refused(
      'bad-input',
      `In ${fileName}, a quotation mark opened in row ${(unclosed.row ?? 0) + 1} is never closed. Nothing was imported; fix that row and import again.`,
    );
  const filled = data
    .map((cells, index) => ({ row: index + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const [header, ...rows] = filled;
  if (!header)
    throw new Refused(
      'bad-input',
      `${fileName} is empty. Nothing was imported; choose a file with a header row and one row a line.`,
    );
  if (rows.length > MOST.rows)
    throw tooMuch(
      fileName,
      `${count(rows.length)} rows`,
      `${count(MOST.rows)} can be read`,
      'split the file',
    );
  const short = rows.filter(({ cells }) => cells.length < header.cells.length);
  if (short.length > 0)
    notes.push(`${rowList(short)} shorter than the header; the missing cells were read as empty.`);
  return { table: { header: header.cells, rows: rows.map((row) => pad(row, header.cells.length)) }, notes };
}

const count = (value: number): string => value.toLocaleString('en-US');

const tooMuch = (fileName: string, has: string, most: string, todo: string): Refused =>
  new Refused('bad-input', `${fileName} has ${has}; at most ${most}. Nothing was imported; ${todo}.`);

/** @throws Refused when there is more of anything than core/input-limits.ts allows */
function checkSize(fileName: string, rows: readonly (readonly string[])[]): void {
  if (rows.length > MOST.lines)
    throw tooMuch(
      fileName,
      `more than ${count(MOST.lines)} lines`,
      `that many can be read, empty ones counted`,
      'split the file',
    );
  for (const [index, cells] of rows.entries()) {
    const row = `row ${index + 1}`;
    if (cells.length > MOST.columns)
      throw tooMuch(
        fileName,
        `${count(cells.length)} cells in ${row}`,
        `${MOST.columns} can be read`,
        'fix that row and import again',
      );
    for (const cell of cells) {
      if (cell.length > MOST.cellCharacters)
        throw tooMuch(
          fileName,
          `a cell of ${count(cell.length)} characters in ${row}`,
          `${count(MOST.cellCharacters)} can be read`,
          'shorten it, or look for a quotation mark that is not closed',
        );
      if (hasUnkeepable(cell))
        throw new Refused(
          'bad-input',
          `In ${fileName}, a cell in ${row} holds a character that is no text. Nothing was imported; save the file as CSV (UTF-8) and import that.`,
        );
    }
  }
}

const pad = (row: { row: number; cells: string[] }, length: number) => ({
  row: row.row,
  cells: [...row.cells, ...Array<string>(Math.max(0, length - row.cells.length)).fill('')],
});

function rowList(rows: readonly { row: number }[]): string {
  const named = rows.slice(0, 5).map(({ row }) => row);
  const more = rows.length > named.length ? ` and ${rows.length - named.length} more` : '';
  return `${rows.length === 1 ? 'Row' : 'Rows'} ${named.join(', ')}${more} ${rows.length === 1 ? 'is' : 'are'}`;
}

/** The separator that occurs most in the header row: there, unlike further down, no comma stands inside a number. */
function guessSeparator(text: string): Separator {
  const header = (/^\s*([^\r\n]*)/.exec(text)?.[1] ?? '').replaceAll(/"[^"]*"/g, '');
  const count = (separator: string) => header.split(separator).length;
  return (Object.keys(SEPARATORS) as Separator[]).reduce((best, next) =>
    count(next) > count(best) ? next : best,
  );
}

/** UTF-16 by its byte-order mark; else UTF-8; else, when the bytes are not UTF-8, Windows-1252, and it is said so. */
function decodeText(fileName: string, bytes: Uint8Array): { text: string; notes: string[] } {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b)
    throw new Refused(
      'bad-input',
      `${fileName} is a spreadsheet or archive, not a CSV file. Nothing was imported; save it as CSV (UTF-8) and import that.`,
    );
  const mark =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : null;
  if (mark) return { text: new TextDecoder(mark).decode(bytes), notes: ['The file is written in UTF-16.'] };
  if (bytes.includes(0))
    throw new Refused(
      'bad-input',
      `${fileName} is not a text file. Nothing was imported; save it as CSV (UTF-8) and import that.`,
    );
  const utf8 = decodeUtf8(bytes);
  if (utf8 !== null) return { text: utf8, notes: [] };
  return {
    text: new TextDecoder('windows-1252').decode(bytes),
    notes: [
      'The file is not in UTF-8; it was read as Windows-1252. Look at names with accents before you import it.',
    ],
  };
}

/** Null when the bytes are not UTF-8. */
function decodeUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
