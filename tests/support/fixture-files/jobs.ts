import { listLines, type ListLine, type Slip, type TruthRow, truthRow } from './lines.ts';

/** A list from the United States: tabs, inches in fractions, feet and inches, month before day, two-digit years. */

const COLUMNS = [
  'Job #',
  'Cust Name',
  'PART NO',
  'Qty Ord',
  'ga',
  'FINISH',
  'Len',
  'Ship By',
  'Comments',
] as const;
const FINISHES = { white: 'WHITE', green: 'GREEN', 'dark-grey': 'CHAR' } as const;

const lines = listLines({
  seed: 1204,
  lines: 112,
  orderNumber: (count) => `J${5501 + count}`,
  customers: ['Thimble Creek Barns', 'Lantern Row Roofing', 'Quillfeather Homes'],
  parts: ['P-101', 'P-102', 'P-103', 'P-105'],
  colours: Object.keys(FINISHES),
  lengths: [1920, 1920, 1536, 1824, 1832, 152, 1157, 1394, 968, 600],
  notes: ['bundle by elevation', 'call before delivery', 'match sample on file', 'tarp the load'],
});

const SLIPS: readonly Slip<string>[] = [
  { line: 5, column: 'Qty Ord', cell: '1,20', why: 'neither 120 nor 1.20 pieces is certain' },
  { line: 14, column: 'Len', cell: '9-1/0"', why: 'no fraction' },
  { line: 23, column: 'Ship By', cell: '2/30/27', why: 'February has 28 days' },
  { line: 33, column: 'Ship By', cell: 'ASAP', why: 'no date' },
  { line: 41, column: 'Qty Ord', cell: '4O', why: 'a letter O for a zero' },
  { line: 56, column: 'Len', cell: "10' 14'", why: 'feet twice' },
  { line: 64, column: 'Qty Ord', cell: '0', why: 'fewer than one piece' },
  { line: 77, column: 'Ship By', cell: '13/13/26', why: 'no month has that number' },
  { line: 89, column: 'Len', cell: 'see dwg', why: 'no length' },
  { line: 101, column: 'Qty Ord', cell: '', why: 'how many is not said' },
];

const fraction = (over: number): string =>
  over % 8 === 0
    ? `${over / 8}/2`
    : over % 4 === 0
      ? `${over / 4}/4`
      : over % 2 === 0
        ? `${over / 2}/8`
        : `${over}/16`;

/** 9-1/2" up to ten inches, above that 10' 6-1/2". */
function length(sixteenths: number): string {
  const inches = (left: number): string => {
    const [whole, over] = [Math.floor(left / 16), left % 16];
    return over === 0 ? `${whole}"` : `${whole === 0 ? '' : `${whole}-`}${fraction(over)}"`;
  };
  if (sixteenths < 192) return inches(sixteenths);
  const over = sixteenths % 192;
  return `${Math.floor(sixteenths / 192)}'${over === 0 ? '' : ` ${inches(over)}`}`;
}

const cellsOf = (line: ListLine): Record<(typeof COLUMNS)[number], string> => ({
  'Job #': line.order,
  'Cust Name': line.customer,
  'PART NO': line.part,
  'Qty Ord': line.quantity >= 1000 ? `1,${String(line.quantity).slice(1)}` : String(line.quantity),
  ga: line.gauge,
  FINISH: FINISHES[line.colour as keyof typeof FINISHES],
  Len: length(line.length),
  'Ship By': `${line.due.month}/${line.due.day}/${String(line.due.year).slice(2)}`,
  Comments: line.note,
});

export function jobs(): { bytes: Uint8Array; truth: object } {
  const rows: string[] = [COLUMNS.join('\t')];
  const truth: TruthRow[] = [];
  for (const [index, line] of lines.entries()) {
    const slip = SLIPS.find((one) => one.line === index);
    const cells = { ...cellsOf(line), ...(slip ? { [slip.column]: slip.cell } : {}) };
    rows.push(COLUMNS.map((column) => cells[column]).join('\t'));
    truth.push(truthRow(rows.length, line, 25.4 / 16, slip));
  }
  return {
    bytes: Buffer.from(rows.join('\n') + '\n'),
    truth: {
      written: 'US system: tabs, feet and inches with fractions, month before day, two-digit years',
      header: 1,
      leftOut: { blank: [], totals: [] },
      columnsNotUsed: [],
      toNote: [],
      same: { colour: { CHAR: 'dark-grey' } },
      rows: truth,
    },
  };
}
