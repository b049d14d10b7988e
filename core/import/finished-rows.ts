import { quoted } from '../quoted.ts';
import type { CellIssue, RowFindings } from './file-check.ts';
import { sameContent } from '../shop/row-change.ts';
import type { Instant } from '../units/brand.ts';
import { findGauge, findNamed, readCount, readInstant, readLength, short, type Cell } from './order-cells.ts';
import { lineOfOperation, operationId, stageOfOperation } from '../shop/order.ts';
import type { FileRow } from './order-rows.ts';
import { operationRecord as recordSchema, type OperationRecord } from '../shop/plan.ts';
import { err, ok, issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { DAY } from '../units/duration.ts';

/** The columns of a file of finished operations, our own format. The last five may be left out. */
export const finishedColumns = [
  'operation',
  'machine',
  'part',
  'material',
  'gauge',
  'colour',
  'length',
  'quantity',
  'start',
  'end',
  'good',
  'scrapped',
  'estimate s',
  'changeover s',
  'who',
] as const;
type Column = (typeof finishedColumns)[number];
const OPTIONAL: readonly Column[] = ['good', 'scrapped', 'estimate s', 'changeover s', 'who'];
const recordNames = recordSchema.shape.who;
const LONGEST_S = 90 * DAY;

interface CheckedFinished extends RowFindings {
  /** The records of the ready rows. */
  readonly records: OperationRecord[];
}

/**
 * Check a file's rows of finished operations. Whatever they name must stand in the shop, or nothing could be learned.
 * @param recorded the shop's record of an operation, null without one
 * @returns every wrong cell with its reason, and what could be taken; problems only when the header is of no use
 */
export function checkFinishedRows(
  shop: Shop,
  header: readonly string[],
  rows: readonly FileRow[],
  recorded: (id: string) => OperationRecord | null,
  now: Instant,
): Result<CheckedFinished> {
  const titles = header.map((title) => title.trim().toLowerCase());
  const missing = finishedColumns.filter((c) => !OPTIONAL.includes(c) && !titles.includes(c));
  if (missing.length > 0)
    return err(
      issue(
        'header',
        missing.join(', '),
        `The header lacks ${missing.map((column) => `“${column}”`).join(', ')}.`,
        `Name the columns in the first row: ${finishedColumns.join(', ')}.`,
      ),
    );
  const issues: CellIssue[] = [];
  const ready: number[] = [];
  const known: number[] = [];
  const records: OperationRecord[] = [];
  const notes: string[] = [];
  const seen = new Set<string>();
  for (const { row, cells } of rows) {
    const reader = rowReader(titles, cells, (column, value, reason) =>
      issues.push({ row, column: header[titles.indexOf(column)] ?? column, value, reason }),
    );
    const record = readRecord(shop, reader, now);
    const current = record && recorded(record.id);
    if (!record) continue;
    // Names are no figures: a file without them tells of the same work.
    if (current && sameContent(current, { ...record, who: current.who })) known.push(row);
    else if (refuseTwice(shop, record, current, seen, reader)) {
      ready.push(row);
      records.push(record);
    }
    seen.add(record.id);
  }
  const unused = header.filter((_, i) => !(finishedColumns as readonly string[]).includes(titles[i] ?? ''));
  if (unused.length > 0) notes.push(`Columns not used: ${quoted(unused)}.`);
  if (titles.includes('who') && !shop.settings.askWho)
    notes.push('Names are not kept: “Ask who ran it” is off in Settings.');
  return ok({ issues, ready, known, records, notes });
}

interface RowReader {
  /** A cell by its rule; null, and a refusal, when it is missing or wrong. */
  read<T>(column: Column, rule: (text: string) => Cell<T>): T | null;
  /** The same; an empty cell takes the usual value. */
  readOr<T>(column: Column, usual: T, rule: (text: string) => Cell<T>): T | null;
  refuse(column: Column, reason: string): void;
  readonly refused: () => boolean;
}

function rowReader(
  titles: readonly string[],
  cells: readonly string[],
  refuse: (column: Column, value: string, reason: string) => void,
): RowReader {
  let refused = false;
  const textOf = (column: Column): string => (cells[titles.indexOf(column)] ?? '').trim();
  const reader: RowReader = {
    read(column, rule) {
      const text = textOf(column);
      const cell =
        text === ''
          ? ({ ok: false, reason: `The ${column} is missing.` } as const)
          : column === 'who'
            ? rule(text)
            : short(column, rule)(text);
      if (cell.ok) return cell.value;
      reader.refuse(column, cell.reason);
      return null;
    },
    readOr: (column, usual, rule) => (textOf(column) === '' ? usual : reader.read(column, rule)),
    refuse(column, reason) {
      refused = true;
      refuse(column, textOf(column), reason);
    },
    refused: () => refused,
  };
  return reader;
}

function readRecord(shop: Shop, reader: RowReader, now: Instant): OperationRecord | null {
  const { read, readOr } = reader;
  const { timeZone, units } = shop.settings;
  const id = read('operation', readOperation);
  const machine = read('machine', (text) => findNamed(shop.machine, text, 'machine'));
  const part = read('part', (text) => findNamed(shop.part, text, 'part'));
  const material = read('material', (text) => findNamed(shop.material, text, 'material'));
  const gauge = read('gauge', (text) => findGauge(material, text));
  const colour = read('colour', (text) => findNamed(shop.colour, text, 'colour'));
  const lengthMm = read('length', (text) => readLength(text, units));
  const quantity = read('quantity', (text) => readCount(text, 'quantity', 100_000));
  const start = read('start', (text) => readInstant(text, '00:00', timeZone));
  const end = read('end', (text) => readInstant(text, '00:00', timeZone));
  const fine = readOr('good', quantity ?? 0, (text) => readAmount(text, 100_000));
  const scrapped = readOr('scrapped', 0, (text) => readAmount(text, 100_000));
  const estimatedSeconds = readOr('estimate s', 0, (text) => readAmount(text, LONGEST_S));
  const changeoverSeconds = readOr<number | null>('changeover s', null, (text) =>
    readAmount(text, LONGEST_S),
  );
  const who = readOr('who', [], readNames);
  if (id && machine && stageOfOperation(id) !== machine.stage)
    reader.refuse('machine', `${machine.id} is a ${machine.stage}, so it cannot have done ${id}.`);
  if (start !== null && end !== null && end <= start) reader.refuse('end', 'It must end after it starts.');
  if (end !== null && end > now) reader.refuse('end', 'It is still to come, so it cannot be finished.');
  if (quantity !== null && fine !== null && fine > quantity)
    reader.refuse('good', `More good pieces than the ${quantity} asked for.`);
  if (reader.refused() || !id || !machine || !part || !material || !gauge || !colour) return null;
  if (lengthMm === null || quantity === null || start === null || end === null) return null;
  return {
    id,
    machineId: machine.id,
    partId: part.id,
    materialId: material.id,
    gauge,
    colourId: colour.id,
    lengthMm,
    quantity,
    good: fine ?? 0,
    scrapped: scrapped ?? 0,
    start,
    end,
    who: shop.settings.askWho ? (who ?? []) : [],
    changeoverSeconds,
    pauses: [],
    estimatedSeconds: estimatedSeconds ?? 0,
    revision: 0,
  };
}

const readOperation = (text: string): Cell<string> =>
  operationId.safeParse(text).success
    ? { ok: true, value: text }
    : { ok: false, reason: `“${text}” is no operation. Write it like 1042/2:shear or 1042/2:brake.` };

/** Names parted by semicolons. */
function readNames(text: string): Cell<string[]> {
  const names = text.split(';').filter((one) => one.trim() !== '');
  const read = recordNames.safeParse([...new Set(names)]);
  return read.success
    ? { ok: true, value: read.data }
    : { ok: false, reason: `“${text}” is no list of names: at most 20, each up to 60 characters.` };
}

/** A whole number from 0 on. */
function readAmount(text: string, most: number): Cell<number> {
  const value = Number(text);
  return Number.isInteger(value) && value >= 0 && value <= most
    ? { ok: true, value }
    : { ok: false, reason: `“${text}” is not a whole number from 0 to ${most.toLocaleString('en-US')}.` };
}

/** True when the row may be taken: its operation is recorded nowhere, and its line is not the floor's to report on. */
function refuseTwice(
  shop: Shop,
  { id }: OperationRecord,
  current: OperationRecord | null,
  seen: ReadonlySet<string>,
  reader: RowReader,
): boolean {
  if (current) reader.refuse('operation', `${id} is recorded already, with other figures. Leave it out.`);
  else if (seen.has(id)) reader.refuse('operation', `${id} is in the file twice. Keep one of the rows.`);
  else if (shop.line.some((l) => l.id === lineOfOperation(id)))
    reader.refuse(
      'operation',
      `Line ${lineOfOperation(id)} is still in the shop. Report work on it on the Floor screen.`,
    );
  else return true;
  return false;
}
