import writeXlsxFile, { type Cell } from 'write-excel-file/node';
import { listLines, type ListLine, type Slip, type TruthRow, truthRow } from './lines.ts';

/** A spreadsheet that somebody keeps by hand: two title rows, typed numbers and dates, some numbers as text, a total. */

const COLUMNS = [
  'W/O',
  'Customer',
  'Item',
  'Pcs',
  'Ga.',
  'Colour',
  'Length (in)',
  'Required',
  'Delivery instructions',
] as const;
type Column = (typeof COLUMNS)[number];
/** What the shop has never made, by the names of this list. */
const UNKNOWN = { 'P-118': 'Gutter strap', 'P-119': 'Coping, wide' } as const;

const lines = listLines({
  seed: 70,
  lines: 104,
  orderNumber: (count) => String(70_151 + count),
  customers: ['Saltbox Porch Builders', 'Heron Point Sheds'],
  parts: ['P-101', 'P-103', 'P-104', 'P-106', 'P-118', 'P-119'],
  colours: ['white', 'green', 'red'],
  lengths: [1920, 1920, 1536, 1908, 600, 1912, 984],
  notes: ['Leave at the yard gate', 'Dock 2, forklift there', 'Phone the site office'],
});

const SLIPS: readonly Slip<string | number | Date>[] = [
  { line: 6, column: 'Pcs', cell: 'n/a', why: 'no number' },
  { line: 15, column: 'Pcs', cell: 12.5, why: 'half a piece cannot be made' },
  { line: 24, column: 'Pcs', cell: '36 or 48', why: 'no certain number' },
  { line: 31, column: 'Required', cell: 'Nov 31', why: 'November has 30 days' },
  { line: 47, column: 'Required', cell: 'week 51', why: 'no date' },
  { line: 55, column: 'Length (in)', cell: -96, why: 'below nothing' },
  { line: 68, column: 'Length (in)', cell: '8 x 10', why: 'two lengths' },
  { line: 74, column: 'Item', cell: '', why: 'which part is not said' },
  { line: 88, column: 'Ga.', cell: 18, why: 'no sheet of the shop is so thick' },
  { line: 95, column: 'Pcs', cell: 0, why: 'fewer than one piece' },
];

const text = (value: string): Cell => (value === '' ? null : { value, type: String });
const number = (value: number): Cell => ({ value, type: Number });
const toCell = (value: string | number | Date): Cell =>
  typeof value === 'string'
    ? text(value)
    : typeof value === 'number'
      ? number(value)
      : { value, type: Date, format: 'd mmm yyyy' };

function cellsOf(line: ListLine, index: number): Record<Column, Cell> {
  const asText = index % 11 === 3;
  return {
    'W/O': number(Number(line.order)),
    Customer: text(line.customer),
    Item: text(UNKNOWN[line.part as keyof typeof UNKNOWN] ?? line.part),
    Pcs: asText ? text(line.quantity.toLocaleString('en-US')) : number(line.quantity),
    'Ga.': number(Number(line.gauge)),
    Colour: text(line.colour),
    'Length (in)': asText ? text(String(line.length / 16)) : number(line.length / 16),
    Required: toCell(new Date(Date.UTC(line.due.year, line.due.month - 1, line.due.day))),
    'Delivery instructions': text(line.note),
  };
}

export async function workOrders(): Promise<{ bytes: Uint8Array; truth: object }> {
  const rows: Cell[][] = [
    [{ value: 'Work orders for the bending shop', type: String, fontWeight: 'bold' }],
    [text('Weeks 49 to 3, printed 28 Nov 2026')],
    COLUMNS.map((column) => ({ value: column, type: String, fontWeight: 'bold' })),
  ];
  const truth: TruthRow[] = [];
  for (const [index, line] of lines.entries()) {
    const slip = SLIPS.find((one) => one.line === index);
    const cells = { ...cellsOf(line, index), ...(slip ? { [slip.column]: toCell(slip.cell) } : {}) };
    rows.push(COLUMNS.map((column) => cells[column]));
    truth.push(truthRow(rows.length, line, 25.4 / 16, slip));
  }
  const sum = lines.reduce((all, { quantity }) => all + quantity, 0);
  const total = rows.push([text('Total'), null, null, number(sum)]);
  return {
    bytes: await writeXlsxFile(rows, { sheet: 'Orders' }).toBuffer(),
    truth: {
      written:
        'spreadsheet kept by hand: titles in rows 1 and 2, a total below, typed numbers and days, some numbers as text',
      header: 3,
      leftOut: { blank: [], totals: [total] },
      columnsNotUsed: [],
      toNote: ['Delivery instructions'],
      same: { part: Object.fromEntries(Object.entries(UNKNOWN).map(([ours, theirs]) => [theirs, ours])) },
      rows: truth,
    },
  };
}
