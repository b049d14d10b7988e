import type { Instant } from '../units/brand.ts';
import { formatLength } from '../units/length.ts';
import {
  DUE_CLOCK,
  findGauge,
  findNamed,
  readCount,
  readInstant,
  readLength,
  readImportance,
  readYesNo,
  short,
  type Cell,
} from './order-cells.ts';
import type { OrderColumn, OrderHeader } from './order-columns.ts';
import { code, name, note } from '../fields.ts';
import { quoted } from '../quoted.ts';
import { routingOf } from '../planning/operations.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Part } from '../part/part.ts';
import type { Shop } from '../shop/state.ts';

/** What a row says about its work order; null where the cell is empty. */
export interface OwnFields {
  readonly customer: string | null;
  readonly release: Instant | null;
  readonly due: Instant | null;
  readonly importance: number | null;
  readonly rush: boolean | null;
  readonly note: string | null;
}

/** What a row asks for. */
export type LineFields = Pick<
  OrderLine,
  'partId' | 'quantity' | 'materialId' | 'gauge' | 'colourId' | 'lengthMm'
> & {
  /** Null where the cell is empty: as the line stands, none for a new one. */
  readonly overrun: number | null;
};

export interface OrderRow {
  readonly orderId: string;
  /** Null where the line number is left out. */
  readonly number: number | null;
  readonly own: OwnFields;
  readonly line: LineFields;
}

/** A row whose cells can all be read, by its number in the file. */
export type ReadRow = OrderRow & { readonly row: number };
/** Says what is wrong with a cell of a row. */
export type Refuse = (row: number, column: OrderColumn, reason: string) => void;

interface CellRefusal {
  readonly column: OrderColumn;
  readonly reason: string;
}

/** Reads cells by their column and gathers what is wrong with them. */
interface CellReader {
  readonly refusals: CellRefusal[];
  /** The cell by its rule; null, and a refusal, when it is empty or wrong. */
  required<T>(column: OrderColumn, rule: (text: string) => Cell<T>): T | null;
  /** The same, but an empty cell is just null. */
  optional<T>(column: OrderColumn, rule: (text: string) => Cell<T>): T | null;
}

function cellReader(at: OrderHeader['at'], cells: readonly string[]): CellReader {
  const refusals: CellRefusal[] = [];
  const textOf = (column: OrderColumn): string => (cells[at[column] ?? -1] ?? '').trim();
  const required: CellReader['required'] = (column, rule) => {
    const text = textOf(column);
    const cell =
      text === ''
        ? ({ ok: false, reason: `The ${column} is missing.` } as const)
        : column === 'note'
          ? rule(text)
          : short(column, rule)(text);
    if (cell.ok) return cell.value;
    refusals.push({ column, reason: cell.reason });
    return null;
  };
  return {
    refusals,
    required,
    optional: (column, rule) => (textOf(column) === '' ? null : required(column, rule)),
  };
}

/**
 * Read one row's cells, each by the rule of its column.
 * @param columns how many the header has
 * @returns the row, or every wrong cell
 */
export function readOrderRow(
  shop: Shop,
  { at }: OrderHeader,
  columns: number,
  cells: readonly string[],
): { readonly row: OrderRow | null; readonly refusals: readonly CellRefusal[] } {
  const shifted = surplus(cells.slice(columns));
  if (shifted) return { row: null, refusals: [shifted] };
  const reader = cellReader(at, cells);
  const orderId = reader.required('order', bySchema(code));
  const number = reader.optional('line', (text) => readCount(text, 'line number', 9999));
  const own = readOwnFields(reader, shop.settings.timeZone);
  const line = readLineFields(reader, shop);
  const { refusals } = reader;
  return { row: orderId && line && refusals.length === 0 ? { orderId, number, own, line } : null, refusals };
}

const readOwnFields = ({ optional }: CellReader, timeZone: string): OwnFields => ({
  customer: optional('customer', bySchema(name)),
  release: optional('not before', (text) => readInstant(text, '00:00', timeZone)),
  due: optional('due', (text) => readInstant(text, DUE_CLOCK, timeZone)),
  importance: optional('importance', readImportance),
  rush: optional('rush', readYesNo),
  note: optional('note', bySchema(note)),
});

function readLineFields({ required, optional, refusals }: CellReader, shop: Shop): LineFields | null {
  const part = required('part', (text) => findNamed(shop.part, text, 'part'));
  const quantity = required('quantity', (text) => readCount(text, 'quantity', 100_000));
  const overrun = optional('extra pieces', (text) => readCount(text, 'extra pieces', 10_000, 0));
  const only = shop.material.length === 1 ? shop.material[0] : undefined;
  const named = (only ? optional : required)('material', (text) =>
    findNamed(shop.material, text, 'material'),
  );
  const material = named ?? only ?? null;
  const gauge = required('gauge', (text) => findGauge(material, text));
  const colour = required('colour', (text) => findNamed(shop.colour, text, 'colour'));
  const lengthMm = optional('length', (text) => readLength(text, shop.settings.units)) ?? part?.lengthMm ?? 0;
  if (!part || !quantity || !material || !gauge || !colour) return null;
  refusals.push(...tooLong(shop, part, lengthMm));
  return {
    partId: part.id,
    quantity,
    overrun,
    materialId: material.id,
    gauge,
    colourId: colour.id,
    lengthMm,
  };
}

/** A row by one of the nouns' own field schemas. */
const bySchema =
  (schema: typeof code | typeof name | typeof note) =>
  (text: string): Cell<string> => {
    const result = schema.safeParse(text);
    return result.success
      ? { ok: true, value: result.data }
      : {
          ok: false,
          reason: `“${text.slice(0, 60)}” is not accepted: ${result.error.issues[0]?.message ?? 'unreadable'}.`,
        };
  };

/** A piece must fit the longest machine of every stage it needs. */
function tooLong(shop: Shop, part: Part, lengthMm: number): CellRefusal[] {
  for (const stage of routingOf(part)) {
    const [first, ...others] = shop.machine.filter((m) => m.stage === stage);
    if (!first)
      return [
        {
          column: 'part',
          reason: `The shop has no ${stage} to make ${part.id} on. Add one in Shop, Machines.`,
        },
      ];
    const longest = others.reduce((a, b) => (b.maxLengthMm > a.maxLengthMm ? b : a), first);
    if (lengthMm <= longest.maxLengthMm) continue;
    const [asked, most] = [lengthMm, longest.maxLengthMm].map((mm) => formatLength(mm, shop.settings.units));
    return [
      {
        column: 'length',
        reason: `${asked} is longer than the ${most} that the longest ${stage}, ${longest.name}, takes. Make it of shorter pieces.`,
      },
    ];
  }
  return [];
}

/** Cells beyond the header belong to no column, so nothing in the row can be trusted to stand in its place. */
function surplus(cells: readonly string[]): CellRefusal | null {
  const filled = cells.filter((cell) => cell !== '');
  if (filled.length === 0) return null;
  const reason = `The row has more cells than the header (${quoted(filled, 5)}). Put a text with separators in quotation marks.`;
  return { column: 'order', reason };
}
