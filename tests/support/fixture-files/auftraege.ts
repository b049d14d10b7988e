import { windows1252 } from '../foreign-files/to-bytes.ts';
import { writeFigure } from '../foreign-files/write-cell.ts';
import { listLines, type ListLine, type Slip, type TruthRow, truthRow } from './lines.ts';

/** A German list: semicolons, Windows-1252, decimal commas and thousands in points, colours by their number. */

const COLOURS = { 'dark-grey': 'RAL 7016', white: 'RAL 9010', red: 'RAL 3009' } as const;
const THICKNESS = { '24': '0,70', '26': '0,55' } as const;
const COLUMNS = [
  'Pos.',
  'Auftrags-Nr.',
  'Kunde',
  'Artikel',
  'Menge',
  'Dicke (mm)',
  'Farbe',
  'Länge (mm)',
  'Bestelldatum',
  'Liefertermin',
  'Bemerkung',
] as const;

const lines = listLines({
  seed: 49,
  lines: 108,
  orderNumber: (count) => `K-${2041 + count}`,
  customers: ['Spenglerei Nebelkranz', 'Hallenbau Distelfink', 'Dachhandwerk Morgentau'],
  parts: ['P-101', 'P-102', 'P-103', 'P-104', 'P-105', 'P-106'],
  colours: Object.keys(COLOURS),
  lengths: [25_000, 25_000, 30_000, 30_000, 20_000, 12_505, 24_400, 18_755, 6_500],
  notes: ['Folie innen', 'für Süddach, bündeln', 'Kranentladung', 'vor Anlieferung anrufen; Tor 3'],
});

const SLIPS: readonly Slip<string>[] = [
  { line: 4, column: 'Menge', cell: '12,5', why: 'half a piece cannot be made' },
  { line: 11, column: 'Länge (mm)', cell: '2.5OO', why: 'letters O for zeros' },
  { line: 19, column: 'Liefertermin', cell: '31.11.2026', why: 'November has 30 days' },
  { line: 27, column: 'Menge', cell: 'ca. 40', why: 'no certain number' },
  { line: 38, column: 'Liefertermin', cell: 'auf Abruf', why: 'no date' },
  { line: 45, column: 'Länge (mm)', cell: '25.00,0', why: 'thousands are grouped by three' },
  { line: 52, column: 'Menge', cell: '-4', why: 'fewer than one piece' },
  { line: 61, column: 'Farbe', cell: '', why: 'which colour is not said' },
  { line: 70, column: 'Länge (mm)', cell: '0', why: 'a piece without length' },
  { line: 83, column: 'Dicke (mm)', cell: '0,62', why: 'no sheet of the shop is so thick' },
  { line: 96, column: 'Artikel', cell: '', why: 'which part is not said' },
];

const day = ({ year, month, day: number }: ListLine['due']): string =>
  `${String(number).padStart(2, '0')}.${String(month).padStart(2, '0')}.${year}`;
const GERMAN = { decimal: ',', group: '.', places: null } as const;
const tenths = (steps: number): string => writeFigure(steps, 1, GERMAN);
const pieces = (count: number): string => writeFigure(count, 0, GERMAN);

function cellsOf(line: ListLine, position: number): Record<(typeof COLUMNS)[number], string> {
  return {
    'Pos.': String(position),
    'Auftrags-Nr.': line.order,
    Kunde: line.customer,
    Artikel: line.part,
    Menge: pieces(line.quantity),
    'Dicke (mm)': THICKNESS[line.gauge as keyof typeof THICKNESS],
    Farbe: COLOURS[line.colour as keyof typeof COLOURS],
    'Länge (mm)': tenths(line.length),
    Bestelldatum: '23.11.2026',
    Liefertermin: day(line.due),
    Bemerkung: line.note,
  };
}

const quoted = (cell: string): string => (/[;"]/.test(cell) ? `"${cell}"` : cell);

export function auftraege(): { bytes: Uint8Array; truth: object } {
  const rows: string[] = [COLUMNS.join(';')];
  const truth: TruthRow[] = [];
  const blank: number[] = [];
  for (const [index, line] of lines.entries()) {
    const before = lines[index - 1];
    if (index % 29 === 28) for (let k = 0; k < 2; k++) blank.push(rows.push(';'.repeat(COLUMNS.length - 1)));
    const position = lines.slice(0, index + 1).filter(({ order }) => order === line.order).length;
    const slip = SLIPS.find((one) => one.line === index);
    const cells = { ...cellsOf(line, position), ...(slip ? { [slip.column]: slip.cell } : {}) };
    // This system names the customer on an order's first row only.
    if (before?.order === line.order) cells.Kunde = '';
    rows.push(COLUMNS.map((column) => quoted(cells[column])).join(';'));
    truth.push(truthRow(rows.length, line, 0.1, slip));
  }
  const sum = pieces(lines.reduce((all, { quantity }) => all + quantity, 0));
  const total = rows.push(`Summe;;;;${sum};;;;;;`);
  return {
    bytes: windows1252(rows.join('\r\n') + '\r\n')!,
    truth: {
      written:
        'German system: Windows-1252, semicolons, decimal comma, thousands in points, day before month',
      header: 1,
      leftOut: { blank, totals: [total] },
      columnsNotUsed: ['Bestelldatum'],
      toNote: [],
      same: { colour: Object.fromEntries(Object.entries(COLOURS).map(([ours, theirs]) => [theirs, ours])) },
      rows: truth,
    },
  };
}
