import { quoted } from '../quoted.ts';
import { err, ok, issue, type Result } from '../result.ts';

/** The columns of a file of work-order lines, our own format. Names are read whatever their case; their order is free. */
export const orderColumns = [
  'order',
  'line',
  'customer',
  'part',
  'quantity',
  'extra pieces',
  'material',
  'gauge',
  'colour',
  'length',
  'not before',
  'due',
  'importance',
  'rush',
  'note',
] as const;
export type OrderColumn = (typeof orderColumns)[number];

/** The rest may be left out: each row then takes its usual value. */
const REQUIRED: readonly OrderColumn[] = ['order', 'customer', 'part', 'quantity', 'gauge', 'colour', 'due'];

/** Other spellings people use, and what older files call a column. */
const ALSO: Readonly<Record<string, OrderColumn>> = {
  'work order': 'order',
  qty: 'quantity',
  color: 'colour',
  overrun: 'extra pieces',
  release: 'not before',
  weight: 'importance',
};

export interface OrderHeader {
  /** Where each column stands; missing: not in the file. */
  readonly at: Readonly<Partial<Record<OrderColumn, number>>>;
  /** Columns that are not ours, as the file names them. */
  readonly unused: readonly string[];
}

/** Find the columns. Refused when a required one is missing or one stands there twice. */
export function readOrderHeader(header: readonly string[]): Result<OrderHeader> {
  const at: Partial<Record<OrderColumn, number>> = {};
  const unused: string[] = [];
  for (const [index, title] of header.entries()) {
    const column = columnOf(title);
    if (column === undefined) unused.push(title.trim() || `column ${index + 1}`);
    else if (at[column] !== undefined)
      return err(
        issue(
          'header',
          column,
          `The header has the column “${column}” twice.`,
          'Remove or rename one of them.',
        ),
      );
    else at[column] = index;
  }
  const missing = REQUIRED.filter((column) => at[column] === undefined);
  if (missing.length === 0) return ok({ at, unused });
  return err(
    issue(
      'header',
      missing.join(', '),
      `The header lacks ${missing.map((column) => `“${column}”`).join(', ')}; it has ${quoted(header)}.`,
      `Name the columns in the first row: ${orderColumns.join(', ')}.`,
    ),
  );
}

function columnOf(title: string): OrderColumn | undefined {
  const plain = title.trim().toLowerCase();
  return orderColumns.find((column) => column === plain) ?? ALSO[plain];
}
