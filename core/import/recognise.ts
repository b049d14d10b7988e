import type { Field, FileFields } from './field.ts';
import { fitOf, NEAR, readHeading } from './heading.ts';
import { EMPTY, type Cell, type Grid, type GridRow } from './grid.ts';
import { MOST } from '../input-limits.ts';
import { quoted } from '../quoted.ts';
import { counted } from '../units/count.ts';
import { TOTALS } from './vocabulary.ts';
import { plainWords } from './words.ts';

/** A file's grid in its parts: what stands above its header, the header, and rows of as many cells. */
export interface Recognised {
  /** The row of the file that names the columns. */
  readonly header: number;
  /** A name for each column, all different: as the file has it, with a number behind where it has it twice. */
  readonly titles: readonly string[];
  readonly rows: readonly GridRow[];
  readonly notes: readonly string[];
}

/** The header is looked for among so many rows that hold something. */
const LOOKED_AT = 20;

/**
 * Finds the header and the rows below it.
 * @param header the row that was said to be it; null: the one with most headings that are known
 */
export function recognise(grid: Grid, { fields }: FileFields, header: number | null): Recognised {
  const first = grid.rows.slice(0, LOOKED_AT);
  const said = grid.rows.find(({ row }) => row === header);
  const top = said ?? best(first, fields) ?? { row: 0, cells: [] };
  const notes: string[] = [];
  const above = grid.rows.filter(({ row }) => row < top.row);
  if (above.length > 0)
    notes.push(
      `The columns are named in row ${top.row}; ${rowsOf(above)} above ${above.length === 1 ? 'is a title' : 'are titles'} (${quoted(
        above.flatMap(({ cells }) => cells.find(({ text }) => text !== '')?.text ?? []),
        3,
      )}) and left out.`,
    );
  const below = grid.rows.filter(({ row }) => row > top.row);
  const again = below.filter((one) => sameTexts(one.cells, top.cells));
  if (again.length > 0)
    notes.push(
      `${capital(rowsOf(again))} ${again.length === 1 ? 'repeats' : 'repeat'} the header and ${again.length === 1 ? 'is' : 'are'} left out.`,
    );
  const rows = below.filter((one) => !again.includes(one));
  const width = top.cells.length;
  const short = rows.filter(({ cells }) => cells.length < width);
  notes.push(...blankNote(top, below));
  return {
    header: top.row,
    titles: titlesOf(top.cells),
    rows: rows.map((row) => filled(row, width, short)),
    notes,
  };
}

/** The row with most headings; of two alike the first. A row of one heading is one only where no other has any. */
function best(rows: readonly GridRow[], fields: readonly Field[]): GridRow | undefined {
  const scored = rows.map((row) => ({ row, score: headingsIn(row.cells, fields) }));
  const most = scored.reduce((a, b) => (b.score > a.score ? b : a), { row: rows[0], score: 0 });
  if (most.score > 0) return most.row;
  return (
    rows.find(({ cells }) => cells.length > 1 && cells.every(({ number }) => number === undefined)) ?? rows[0]
  );
}

/** How many fields the cells name; one that is only alike counts less. */
function headingsIn(cells: readonly Cell[], fields: readonly Field[]): number {
  const named = new Map<string, number>();
  for (const { text } of cells) {
    if (text === '' || text.length > MOST.shortCellCharacters) continue;
    const heading = readHeading(text);
    for (const field of fields) {
      const fit = fitOf(heading, field);
      if (fit !== null) named.set(field.name, Math.max(named.get(field.name) ?? 0, fit < NEAR ? 1 : 0.4));
    }
  }
  return [...named.values()].reduce((sum, one) => sum + one, 0);
}

function titlesOf(cells: readonly Cell[]): string[] {
  const used = new Set<string>();
  return cells.map(({ text }, index) => {
    const own = text.slice(0, MOST.shortCellCharacters - 10) || `column ${index + 1}`;
    let title = own;
    for (let n = 2; used.has(title); n++) title = `${own} (${n})`;
    used.add(title);
    return title;
  });
}

const sameTexts = (a: readonly Cell[], b: readonly Cell[]): boolean =>
  b.length > 0 && b.every(({ text }, i) => plainWords(text) === plainWords(a[i]?.text ?? ''));

function filled(row: GridRow, width: number, short: readonly GridRow[]): GridRow {
  if (!short.includes(row)) return row;
  return { row: row.row, cells: [...row.cells, ...Array<Cell>(width - row.cells.length).fill(EMPTY)] };
}

/** Blank rows between others; those at the end are nobody's business. */
function blankNote(top: GridRow, rows: readonly GridRow[]): string[] {
  const last = rows.at(-1)?.row ?? top.row;
  const blank = last - top.row - rows.length;
  return blank > 0 ? [`${capital(counted(blank, 'blank row'))} ${blank === 1 ? 'is' : 'are'} left out.`] : [];
}

/**
 * Rows of sums: they begin with a word for one, or (the last row) hold numbers only, and name no order, part or whatever the
 * file has a row for.
 * @param key the column of that; -1: not known
 */
export function withoutTotals(
  rows: readonly GridRow[],
  key: number,
): { readonly rows: readonly GridRow[]; readonly notes: readonly string[] } {
  const sums = rows.filter(
    (row, index) => isTotal(row, key) || (index === rows.length - 1 && onlyNumbers(row, key)),
  );
  if (sums.length === 0) return { rows, notes: [] };
  return {
    rows: rows.filter((row) => !sums.includes(row)),
    notes: [
      `${capital(rowsOf(sums))} ${sums.length === 1 ? 'is a sum' : 'are sums'} (${quoted(
        sums.map(({ cells }) =>
          cells
            .map(({ text }) => text)
            .filter(Boolean)
            .join(' '),
        ),
        3,
      )}) and left out.`,
    ],
  };
}

const isWord = ({ text }: Cell): boolean => text.length < 40 && TOTALS.includes(plainWords(text));

function isTotal({ cells }: GridRow, key: number): boolean {
  const first = cells.find(({ text }) => text !== '');
  const named = key >= 0 ? (cells[key]?.text ?? '') : '';
  return first !== undefined && isWord(first) && (named === '' || isWord({ text: named }));
}

function onlyNumbers({ cells }: GridRow, key: number): boolean {
  const full = cells.filter(({ text }) => text !== '');
  return (
    key >= 0 &&
    (cells[key]?.text ?? '') === '' &&
    full.length > 0 &&
    full.every(({ text }) => /^[\d.,'’\s]+$/.test(text))
  );
}

function rowsOf(rows: readonly GridRow[]): string {
  const named = rows
    .slice(0, 5)
    .map(({ row }) => row)
    .join(', ');
  const more = rows.length > 5 ? ` and ${rows.length - 5} more` : '';
  return `row${rows.length === 1 ? '' : 's'} ${named}${more}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
