import Papa from 'papaparse';
import type { GridRow, Grid } from '../../core/import/grid.ts';
import { hasUnkeepable, MOST } from '../../core/input-limits.ts';
import { Refused } from '../refused.ts';
import { grouped } from '../../core/grouped.ts';

const SEPARATORS = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;
type Separator = keyof typeof SEPARATORS;

/**
 * Read a text file of cells: its encoding, its separator, its cells.
 * @throws Refused with a sentence when it is empty, no text, too big, or a quotation mark is never closed
 */
export function readText(fileName: string, bytes: Uint8Array): Grid {
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
  const rows = data.map((cells, index) => ({
    row: index + 1,
    cells: cells.map((cell) => ({ text: cell.trim() })),
  }));
  return { rows: filledRows(fileName, rows), notes, sheets: [] };
}

/** The rows that hold something. @throws Refused when there are none, or too many */
export function filledRows(fileName: string, all: readonly GridRow[]): GridRow[] {
  const rows = all.filter(({ cells }) => cells.some(({ text }) => text !== ''));
  if (rows.length === 0)
    throw new Refused(
      'bad-input',
      `${fileName} is empty. Nothing was imported; choose a file with a header row and one row a line.`,
    );
  if (rows.length - 1 > MOST.rows)
    throw tooMuch(
      fileName,
      `${grouped(rows.length - 1)} rows`,
      `${grouped(MOST.rows)} can be read`,
      'split the file',
    );
  return rows;
}

const tooMuch = (fileName: string, has: string, most: string, todo: string): Refused =>
  new Refused('bad-input', `${fileName} has ${has}; at most ${most}. Nothing was imported; ${todo}.`);

/** @throws Refused when there is more of anything than core/input-limits.ts allows */
export function checkSize(fileName: string, rows: readonly (readonly string[])[]): void {
  if (rows.length > MOST.lines)
    throw tooMuch(
      fileName,
      `more than ${grouped(MOST.lines)} lines`,
      `that many can be read, empty ones counted`,
      'split the file',
    );
  for (const [index, cells] of rows.entries()) {
    const row = `row ${index + 1}`;
    if (cells.length > MOST.columns)
      throw tooMuch(
        fileName,
        `${grouped(cells.length)} cells in ${row}`,
        `${MOST.columns} can be read`,
        'fix that row and import again',
      );
    for (const cell of cells) {
      if (cell.length > MOST.cellCharacters)
        throw tooMuch(
          fileName,
          `a cell of ${grouped(cell.length)} characters in ${row}`,
          `${grouped(MOST.cellCharacters)} can be read`,
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

/** So many lines tell how a file's cells are separated. */
const LOOKED_AT = 30;

/**
 * The separator that most lines have as often as one another: a comma inside numbers or notes comes and goes. Titles above
 * the header have none.
 */
function guessSeparator(text: string): Separator {
  const lines = text
    .slice(0, 100_000)
    .replaceAll(/"[^"]*"/g, '')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .slice(0, LOOKED_AT);
  const steady = (separator: string): number => {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const own = line.split(separator).length - 1;
      counts.set(own, (counts.get(own) ?? 0) + 1);
    }
    return Math.max(...[...counts].map(([own, times]) => own * times), 0);
  };
  return (Object.keys(SEPARATORS) as Separator[]).reduce((best, next) =>
    steady(next) > steady(best) ? next : best,
  );
}

/** UTF-16 by its byte-order mark; else UTF-8; else, when the bytes are not UTF-8, Windows-1252, and it is said so. */
function decodeText(fileName: string, bytes: Uint8Array): { text: string; notes: string[] } {
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
    text: decodeWindows(bytes),
    notes: [
      'The file is not in UTF-8; it was read as Windows-1252. Look at names with accents before you import it.',
    ],
  };
}

/**
 * The characters of bytes 80 to 9F. Node's own decoder reads them as control characters, so “’” and “€” would be lost.
 * Source: WHATWG Encoding Standard, index windows-1252.
 */
const WINDOWS = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

const decodeWindows = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
    .toString('latin1')
    .replaceAll(/[\u0080-\u009f]/g, (letter) => WINDOWS[letter.charCodeAt(0) - 0x80] ?? letter);

/** Null when the bytes are not UTF-8. */
function decodeUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
