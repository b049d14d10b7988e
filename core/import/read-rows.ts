import type { Material } from '../material/material.ts';
import { quoted } from '../quoted.ts';
import { otherNameId } from '../shop/other-name.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';
import type { Answers } from './answers.ts';
import type { Field, Value } from './field.ts';
import { EMPTY, type Cell, type GridRow } from './grid.ts';
import type { Names } from './names.ts';
import type { ColumnUse } from './propose.ts';
import type { CellContext, CellRead, ColumnStyle } from './cell-read.ts';
import { readCell } from './read-cell.ts';
import type { CellReading, Question } from './reading.ts';

/** A row whose cells were read, each by its field. */
export interface ReadRow {
  readonly row: number;
  readonly values: Readonly<Record<string, Value | undefined>>;
  readonly cells: readonly CellReading[];
  /** A cell waits for an answer. */
  readonly waits: boolean;
  /** What is wrong with the row as a whole; '': nothing. */
  readonly wrong: string;
}

/** How a field's cells are found and read. */
export interface ReadField {
  readonly field: Field;
  readonly use: ColumnUse | null;
  readonly style: ColumnStyle;
}

interface Asked {
  readonly shop: Shop;
  readonly now: Instant;
  readonly names: Names;
  readonly answers: Answers;
  readonly fields: readonly ReadField[];
  /** Columns that go to the note. */
  readonly toNote: readonly ColumnUse[];
  /** How many columns the header names. */
  readonly width: number;
}

/** The cells of fields and rows, as the file has them or as they were typed again. */
export function cellsOf({ answers: { cells = [], every = {} }, toNote }: Pick<Asked, 'answers' | 'toNote'>) {
  const typed = new Map(cells.map(({ row, field, text }) => [`${row} ${field}`, text]));
  return ({ row, cells: own }: GridRow, { name }: Field, use: ColumnUse | null): Cell => {
    const again = typed.size === 0 ? undefined : typed.get(`${row} ${name}`);
    if (again !== undefined) return { text: again };
    const cell = use ? (own[use.column] ?? EMPTY) : { text: every[name] ?? '' };
    return name === 'note' ? { text: noteOf(cell, own, toNote) } : cell;
  };
}

/** The note with what other columns say, each under its title. */
const noteOf = (cell: Cell, own: readonly Cell[], toNote: readonly ColumnUse[]): string =>
  [
    cell.text,
    ...toNote.map(({ column, title }) => (own[column]?.text ? `${title}: ${own[column].text}` : '')),
  ]
    .filter((text) => text !== '')
    .join('; ');

/** Reads every row; what the shop does not know is asked once for all rows that say it. */
export function readRows(
  rows: readonly GridRow[],
  asked: Asked,
): { readonly rows: readonly ReadRow[]; readonly questions: readonly Question[] } {
  const unknown = new Map<string, Question & { readonly is: 'same' }>();
  const cellAt = cellsOf(asked);
  const readOnce = onceEach(asked);
  const read = rows.map((row): ReadRow => {
    const surplus = surplusOf(row, asked.width);
    const values: Record<string, Value | undefined> = {};
    const cells: CellReading[] = [];
    let waits = false;
    for (const { field, use, style } of asked.fields) {
      const cell = cellAt(row, field, use);
      const found = readOnce(cell, field, style, materialOf(asked.shop, values['material']));
      if (found.is === 'read') values[field.name] = found.value;
      if (found.is === 'unknown') note(unknown, found, field, cell.text);
      waits ||= found.is === 'open' || found.is === 'unknown' || found.is === 'later';
      cells.push(...shown(found, field, cell, use !== null || field.name in (asked.answers.every ?? {})));
    }
    return { row: row.row, values, cells, waits, wrong: surplus };
  });
  return { rows: read, questions: [...unknown.values()] };
}

/** Reads a text of a column once, however many rows say it. */
function onceEach(asked: Omit<CellContext, 'material'>) {
  const known = new Map<string, CellRead>();
  return (cell: Cell, field: Field, style: ColumnStyle, material: Material | null): CellRead => {
    const metal = field.sort.is === 'gauge' ? (material?.id ?? '') : '';
    const key = `${field.name}\n${metal}\n${cell.number === undefined ? '' : 'exact'}\n${cell.text}`;
    const before = known.get(key);
    if (before) return before;
    const found = readCell(cell, field, style, { ...asked, material });
    known.set(key, found);
    return found;
  };
}

/** The row's metal; the only one of the shop where it may stay empty. */
const materialOf = ({ material }: Shop, id: Value | undefined): Material | null =>
  id === undefined
    ? material.length === 1
      ? material[0]!
      : null
    : (material.find((one) => one.id === id) ?? null);

/** A cell as it is shown; an empty one of no column is not. */
function shown(found: CellRead, { name, needed }: Field, { text }: Cell, inFile: boolean): CellReading[] {
  const cell = { field: name, text, read: '' };
  switch (found.is) {
    case 'read':
      return [{ ...cell, read: found.shows }];
    case 'wrong':
      return [{ ...cell, issue: found.reason }];
    case 'empty':
      if (needed === 'row' && inFile) return [{ ...cell, issue: `The ${name} is missing.` }];
      return inFile ? [cell] : [];
    default:
      return [cell];
  }
}

function note(
  unknown: Map<string, Question & { readonly is: 'same' }>,
  { what, choices }: Extract<CellRead, { is: 'unknown' }>,
  { name }: Field,
  text: string,
): void {
  const id = `same:${otherNameId(what, text)}`;
  const before = unknown.get(id);
  const words = `The shop has no ${what} “${text}”. Which of its own is it?`;
  unknown.set(id, {
    is: 'same',
    id,
    what,
    field: name,
    text,
    choices: [...(before?.choices ?? choices)],
    words,
    rows: (before?.rows ?? 0) + 1,
  });
}

/** Cells beyond the header belong to no column, so nothing in the row can be trusted to stand in its place. */
function surplusOf({ cells }: GridRow, width: number): string {
  const filled = cells.slice(width).filter(({ text }) => text !== '');
  if (filled.length === 0) return '';
  return `The row has more cells than the header (${quoted(
    filled.map(({ text }) => text),
    5,
  )}). Put a text with separators in quotation marks.`;
}
