import type { CellReading, Reading, RowReading, RowState } from '../../../core/import/reading.ts';

/** What of a file's rows is shown, and where. Heights are in pixels, as in import.module.css. */

const ROW = 42;
const REASON = 18;

/** What is to be said of a row: of it as a whole, then of its cells. */
export const reasonsOf = ({ words, cells }: RowReading): string[] => [
  ...(words === '' ? [] : [words]),
  ...cells.flatMap(({ field, issue }) => (issue === undefined ? [] : [`${field}: ${issue}`])),
];

/** Where each row begins, and behind the last where all end. */
export function rowTops(rows: readonly RowReading[]): number[] {
  let top = 0;
  return [...rows.map(reasonsOf), null].map((reasons) => {
    const own = top;
    if (reasons) top += ROW + REASON * reasons.length + (reasons.length > 0 ? 6 : 0);
    return own;
  });
}

/** The row that a height belongs to. */
export function rowAt(tops: readonly number[], height: number): number {
  let first = 0;
  let end = tops.length - 1;
  while (end - first > 1) {
    const middle = (first + end) >> 1;
    if (tops[middle]! <= height) first = middle;
    else end = middle;
  }
  return first;
}

/** The fields that the rows show, in the order in which they are read. */
export const fieldsOf = (rows: readonly RowReading[]): string[] => [
  ...new Set(rows.flatMap(({ cells }) => cells.map(({ field }) => field))),
];

const NARROWEST = 6;
const WIDEST = 24;

/** Characters that fit into each column: as many as its longest cell or title has, within reason. */
export function columnWidths(
  fields: readonly string[],
  { rows, columns }: Pick<Reading, 'rows' | 'columns'>,
): number[] {
  const longest = new Map<string, number>(fields.map((field) => [field, field.length]));
  const hold = (field: string | null, length: number): void => {
    if (field !== null && length > (longest.get(field) ?? 0)) longest.set(field, length);
  };
  for (const { field, title } of columns) hold(field, title.length);
  for (const { cells } of rows)
    for (const { field, text, read } of cells) hold(field, Math.max(text.length, read.length));
  return fields.map((field) => Math.min(WIDEST, Math.max(NARROWEST, longest.get(field) ?? 0)));
}

/** Beneath a cell: what stands in the shop where the row changes it, else the file's own text where it reads otherwise. */
export function underCell({ text, read, was }: CellReading): string {
  if (was !== undefined) return `was ${was === '' ? 'empty' : was}`;
  return read !== '' && read !== text ? text : '';
}

/** In words, the ones that need somebody first. */
export const STATES: readonly (readonly [RowState, string])[] = [
  ['wrong', 'Wrong'],
  ['waiting', 'Waiting'],
  ['changed', 'Changed'],
  ['new', 'New'],
  ['known', 'Known already'],
];
