import type { Command, Remembered } from '../edit/command.ts';
import type { Layout } from '../shop/file-layout.ts';
import type { Shop } from '../shop/state.ts';
import { wallParts } from '../time/wall.ts';
import type { Instant } from '../units/brand.ts';
import { counted } from '../units/count.ts';
import type { Answers } from './answers.ts';
import type { Field, FileFields } from './field.ts';
import type { Grid, GridRow } from './grid.ts';
import type { ImportKind, Judged, Past } from './kind.ts';
import { namesOf } from './names.ts';
import { proposeColumns, type ColumnUse } from './propose.ts';
import type { Question, Reading } from './reading.ts';
import { cellsOf, readRows, type ReadField, type ReadRow } from './read-rows.ts';
import { recognise, withoutTotals } from './recognise.ts';
import { layoutOf, namesSaid, rememberedLayout, shapeOf } from './remember.ts';
import { columnsShown, rowsShown } from './show.ts';
import { settleStyle, type SettledStyle } from './style.ts';

export interface FileAsked {
  readonly shop: Shop;
  readonly fileName: string;
  readonly grid: Grid;
  readonly answers: Answers;
  readonly now: Instant;
  readonly past: Past;
}

export interface FileRead {
  readonly reading: Reading;
  /** What the cells of each row say, in the file's order; a cell that cannot be read says nothing. */
  readonly read: readonly ReadRow[];
  /** Takes the rows that are new or change something; null: there are none. */
  readonly command: Command | null;
}

/**
 * Reads a file of a kind: which row names the columns, which column is which field, how its cells are meant, what each row
 * is to the shop. Whatever can mean two things is asked, once for a column or a text; nothing is stored.
 */
export function readFile(of: ImportKind, { shop, fileName, grid, answers, now, past }: FileAsked): FileRead {
  const file = of.fields(shop);
  const found = recognise(grid, file, answers.header ?? null);
  const shape = shapeOf(file.kind, found.titles);
  const remembered = rememberedLayout(shop, shape);
  const names = namesOf(shop, answers.same ?? []);
  const today = wallParts(now, shop.settings.timeZone).date;
  const proposal = proposeColumns(found, file.fields, { answers, remembered, names, today });
  const key = proposal.uses.find(({ field }) => field?.name === file.key)?.column ?? -1;
  const body = withoutTotals(found.rows, key);
  const leaveOut = new Set(answers.leaveOut);
  const rows = body.rows.filter(({ row }) => !leaveOut.has(row));
  const styled = styles(file, rows, { uses: proposal.uses, shop, answers, remembered, today });
  const toNote = proposal.uses.filter((use) => use.toNote);
  const width = found.titles.length;
  const read = readRows(rows, { shop, now, names, answers, fields: styled.fields, toNote, width });
  const isTorn = proposal.questions.length > 0;
  const isFit = (row: ReadRow): boolean =>
    !isTorn && !row.waits && row.wrong === '' && row.cells.every(({ issue }) => issue === undefined);
  const judged = of.judge(read.rows.filter(isFit), {
    shop,
    now,
    past,
    unread: read.rows.filter((row) => !isFit(row)),
    accepted: new Set(answers.accept),
  });
  const shown = rowsShown(read.rows, judged, { accepted: new Set(answers.accept), waitAll: isTorn });
  const questions = [...proposal.questions, ...styled.questions, ...read.questions];
  const notes = [
    ...grid.notes,
    ...found.notes,
    ...body.notes,
    ...leftOut(rows.length, body.rows),
    ...proposal.notes,
    ...styled.notes,
    ...judged.notes,
    ...unusedNote(proposal.uses),
  ];
  return {
    reading: {
      kind: file.kind,
      fileName,
      sheets: [...grid.sheets],
      header: found.header,
      columns: columnsShown(proposal.uses, styled.settled, rows),
      questions,
      notes,
      ...shown,
      missing: [...judged.missing],
    },
    read: read.rows,
    command: commandOf(fileName, judged, {
      names: namesSaid(answers),
      layout: layoutOf(shape, file.kind, proposal.uses, styled.fields, answers, remembered),
    }),
  };
}

interface Styling {
  readonly uses: readonly ColumnUse[];
  readonly shop: Shop;
  readonly answers: Answers;
  readonly remembered: Layout | null;
  readonly today: string;
}

/** How each field's cells are read, and what of it must be asked. */
function styles(file: FileFields, rows: readonly GridRow[], { uses, shop, ...asked }: Styling) {
  const cellAt = cellsOf({ answers: asked.answers, toNote: [] });
  const settled = new Map<string, SettledStyle>();
  const fields: ReadField[] = [];
  const questions: Question[] = [];
  const notes: string[] = [];
  for (const field of file.fields) {
    const use = uses.find((one) => one.field === field) ?? null;
    const cells = rows.map((row) => ({ row: row.row, cell: cellAt(row, field, use) }));
    const own = settleStyle(field, use, cells, { ...asked, units: shop.settings.units });
    settled.set(field.name, own);
    fields.push({ field, use, style: own.style });
    questions.push(...questionOf(field, use, own, cells));
    if (
      use &&
      own.unitFrom === 'shop' &&
      own.open?.is !== 'units' &&
      field.sort.is !== 'gauge' &&
      cells.some(({ cell }) => isBare(cell.text))
    )
      notes.push(
        `“${use.title}” names no unit: bare figures are read in ${own.style.unit === 'in' ? 'inches' : own.style.unit}, the shop’s own.`,
      );
  }
  return { settled, fields, questions, notes };
}

/** A figure with nothing behind it, and no unit in front of all. */
const isBare = (text: string): boolean => /\d\s*$/.test(text) && !/^\s*[a-z"']+\s*:/i.test(text);

function questionOf(
  { name }: Field,
  use: ColumnUse | null,
  { open }: SettledStyle,
  cells: readonly { readonly cell: { readonly text: string } }[],
): Question[] {
  if (!open) return [];
  const title = use?.title ?? name;
  const both = open.meanings.map(({ means }) => means).join(' or ');
  const asked = {
    row: open.row,
    text: open.text,
    id: `${open.is}:${name}`,
    field: name,
    title,
    words: `In “${title}”, row ${open.row}, “${open.text}” can be ${both}. Which is meant in this column?`,
    rows: cells.filter(({ cell }) => cell.text !== '').length,
  };
  return open.is === 'units'
    ? [{ ...asked, is: open.is, meanings: [...open.meanings] }]
    : [{ ...asked, is: open.is, meanings: [...open.meanings] }];
}

const leftOut = (left: number, all: readonly GridRow[]): string[] =>
  left === all.length
    ? []
    : [
        `${counted(all.length - left, 'row')} ${all.length - left === 1 ? 'is' : 'are'} left out, as was said.`,
      ];

function unusedNote(uses: readonly ColumnUse[]): string[] {
  const unused = uses
    .filter(({ field, toNote }) => field === null && !toNote)
    .map(({ title }) => `“${title.slice(0, 60)}”`);
  return unused.length === 0
    ? []
    : [
        `Columns not used: ${unused.slice(0, 20).join(', ')}${unused.length > 20 ? ` and ${unused.length - 20} more` : ''}.`,
      ];
}

function commandOf(fileName: string, { command }: Judged, remembered: Remembered): Command | null {
  return command ? command(fileName, remembered) : null;
}
