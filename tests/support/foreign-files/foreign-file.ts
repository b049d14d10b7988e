import { mulberry32, type Rng } from '../../../demo-data/make/rng.ts';
import { type Dialect, drawDialect } from './dialect.ts';
import {
  type Bystander,
  BYSTANDERS,
  drawHeading,
  type Field,
  FIELDS,
  PAGE_FEET,
  SHEET_TITLES,
  SUBTOTALS,
  TOTALS,
} from './headings.ts';
import { type Day, later, type MeantLine } from './meant.ts';
import { drawMistake } from './mistakes.ts';
import { toBytes } from './to-bytes.ts';
import {
  drawLength,
  text,
  writeDate,
  writeFigure,
  writeLength,
  writeQuantity,
  type Written,
} from './write-cell.ts';

/** What the shop calls its things, and how this file's writer may call them. */
export interface ShopWords {
  readonly units: 'in' | 'mm';
  readonly parts: readonly string[];
  /** A code and the names that mean it. */
  readonly colours: Readonly<Record<string, readonly string[]>>;
  /** A label, the texts that mean it, and its thickness in hundredths of a millimetre. */
  readonly gauges: Readonly<
    Record<string, { readonly named: readonly string[]; readonly hundredths: number }>
  >;
}

export interface ForeignFile {
  readonly seed: number;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly dialect: Dialect;
  /** The truth: by the number of the row in the file, what was meant, and what was written so that nobody can know. */
  readonly meant: ReadonlyMap<number, { readonly line: MeantLine; readonly mistake: Field | null }>;
  /** What each column is, in the file's order. */
  readonly columns: readonly { readonly heading: string; readonly is: Field | Bystander }[];
  /** Rows that name no line: titles, header, sums. */
  readonly rows: readonly (readonly Written[])[];
}

const CUSTOMERS = ['Thimble Creek Barns', 'Nebelkranz Dach', 'Toits de la Huppe', 'Quillfeather Homes'];
const NOTES = [
  '',
  '',
  '',
  'Bundle by elevation',
  'Folie innen',
  'À palettiser',
  'call first; gate code',
  '2 bundles, 40 each',
];
/** The Monday on which files are read. */
const TODAY: Day = { year: 2026, month: 11, day: 30 };

function drawQuantity(rng: Rng): number {
  return rng.weighted([
    [rng.whole(1, 99), 6],
    [rng.whole(100, 999), 2],
    [rng.whole(1000, 9999), 1],
    [rng.whole(1, 20) * 1000, 1],
  ]);
}

/** Lines in orders of one to five; an order's lines have one customer and mostly one due date. */
function drawLines(rng: Rng, dialect: Dialect, shop: ShopWords): MeantLine[] {
  const lines: MeantLine[] = [];
  const enough = rng.whole(3, 30);
  const numbered = rng.pick(['', '', '00', 'A-', 'W']);
  for (let order = rng.whole(4000, 70_000); lines.length < enough; order++) {
    const customer = rng.pick(CUSTOMERS);
    const due = later(TODAY, rng.whole(2, 300));
    const dueMinutes = dialect.due.time === 'none' ? null : rng.whole(12, 36) * 30;
    const count = rng.whole(1, 5);
    for (let line = 1; line <= count; line++)
      lines.push({
        order: `${numbered}${order}`,
        line,
        customer,
        part: rng.pick(shop.parts),
        quantity: drawQuantity(rng),
        gauge: rng.pick(Object.keys(shop.gauges)),
        colour: rng.pick(Object.keys(shop.colours)),
        length: drawLength(rng, dialect.length),
        release: later(TODAY, rng.whole(0, 1)),
        due: dialect.sparse || rng.chance(0.9) ? due : later(due, rng.whole(1, 20)),
        dueMinutes,
        note: rng.pick(NOTES),
      });
  }
  return lines;
}

function writeField(rng: Rng, field: Field, line: MeantLine, dialect: Dialect, shop: ShopWords): Written {
  // Spreadsheets hold some of their numbers as text: typed with an apostrophe, or pasted.
  const spreadsheet = dialect.spreadsheet && rng.chance(0.95);
  if (field === 'quantity') return writeQuantity(line.quantity, dialect, spreadsheet);
  if (field === 'length') return writeLength(line.length, dialect.length, spreadsheet);
  if (field === 'line') return spreadsheet ? { kind: 'number', value: line.line } : text(String(line.line));
  if (field === 'release') return writeDate(line.release, null, dialect, spreadsheet);
  if (field === 'due') return writeDate(line.due, line.dueMinutes, dialect, spreadsheet);
  if (field === 'colour') return text(rng.pick(shop.colours[line.colour]!));
  if (field === 'gauge') return writeGauge(rng, shop.gauges[line.gauge]!, dialect, spreadsheet);
  if (field === 'order' && spreadsheet && /^[1-9]\d*$/.test(line.order))
    return { kind: 'number', value: Number(line.order) };
  return text(line[field]);
}

function writeGauge(
  rng: Rng,
  { named, hundredths }: ShopWords['gauges'][string],
  { thickness, quantity }: Dialect,
  spreadsheet: boolean,
): Written {
  if (thickness === 'label') return text(rng.pick(named).replace('.', quantity.decimal));
  if (spreadsheet) return { kind: 'number', value: hundredths / 100 };
  return text(writeFigure(hundredths, 2, { ...quantity, places: 2 }));
}

/** Figures and days that are not ours, written in the same way. */
function writeBystander(rng: Rng, is: Bystander, dialect: Dialect): Written {
  const figure = { ...dialect.length, unitIn: 'none', fractions: 'none', unit: 'mm' } as const;
  if (is === 'orderDate' || is === 'printed')
    return writeDate({ year: 2026, month: 11, day: rng.whole(2, 28) }, null, dialect, dialect.spreadsheet);
  if (is === 'shipped') return writeQuantity(rng.whole(0, 40), dialect, dialect.spreadsheet);
  if (is === 'backColour') return text(rng.pick(['bone', 'moss']));
  if (is === 'customerNumber') return text(String(rng.whole(10_000, 99_999)));
  if (is === 'description') return text(rng.pick(['Drip edge, bent', 'Ortgang', 'Rive 2 plis']));
  if (is === 'clerk') return text(rng.pick(['ab', 'mk', 'xy']));
  return writeLength({ steps: rng.whole(10, 30_000), stepMm: 0.1 }, figure, dialect.spreadsheet);
}

const shuffled = <T>(rng: Rng, items: readonly T[]): T[] =>
  items
    .map((item) => ({ item, at: rng.next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);

function drawColumns(rng: Rng, dialect: Dialect): ForeignFile['columns'] {
  const rare: Readonly<Partial<Record<Field, number>>> = { note: 0.6, line: 0.4, release: 0.2 };
  const ours = FIELDS.filter((field) => rng.chance(rare[field] ?? 1));
  const others = rng.chance(0.5) ? [] : shuffled(rng, BYSTANDERS).slice(0, rng.whole(1, 4));
  const all = rng.chance(0.5) ? shuffled(rng, [...ours, ...others]) : [...ours, ...others];
  return all.map((is) => ({ is, heading: drawHeading(rng, dialect, is) }));
}

/** A row that only says how many pieces stand above it. */
const sumRow = (
  word: string,
  columns: ForeignFile['columns'],
  lines: readonly MeantLine[],
  dialect: Dialect,
): Written[] =>
  columns.map(({ is }, at) =>
    is === 'quantity'
      ? writeQuantity(
          lines.reduce((sum, { quantity }) => sum + quantity, 0),
          dialect,
          dialect.spreadsheet,
        )
      : text(at === 0 ? word : ''),
  );

/** What stands between the lines and is none. */
function drawBetween(
  rng: Rng,
  columns: ForeignFile['columns'],
  before: readonly MeantLine[],
  dialect: Dialect,
): Written[][] {
  const rows: Written[][] = [];
  if (rng.chance(0.03)) rows.push([]);
  if (before.length > 0 && rng.chance(0.02)) rows.push(columns.map(({ heading }) => text(heading)));
  if (before.length > 0 && rng.chance(0.01))
    rows.push(sumRow(SUBTOTALS[dialect.language], columns, before, dialect));
  if (before.length > 0 && rng.chance(0.01)) rows.push([text(PAGE_FEET[dialect.language])]);
  return rows;
}

/** A line's cells, a mistake in one of them or none. @param first of its order */
function drawRow(
  rng: Rng,
  columns: ForeignFile['columns'],
  {
    line,
    mistake,
    first,
  }: { line: MeantLine; mistake: ReturnType<typeof drawMistake> | null; first: boolean },
  dialect: Dialect,
  shop: ShopWords,
): Written[] {
  return columns.map(({ is }) => {
    if (mistake?.field === is) return text(mistake.text);
    if (dialect.sparse && !first && (is === 'customer' || is === 'due')) return text('');
    const cell = (FIELDS as readonly string[]).includes(is)
      ? writeField(rng, is as Field, line, dialect, shop)
      : writeBystander(rng, is as Bystander, dialect);
    const gap = dialect.padded && cell.kind === 'text' ? rng.pick(['', ' ', '  ', '\u00a0']) : '';
    return gap === '' || cell.kind !== 'text' || cell.text === '' ? cell : text(gap + cell.text + gap);
  });
}

/** A file of order lines as someone else's program, or someone by hand, would write it; the same seed gives the same. */
export async function foreignFile(seed: number, shop: ShopWords): Promise<ForeignFile> {
  const rng = mulberry32(seed);
  const dialect = drawDialect(rng, shop.units);
  const columns = drawColumns(rng, dialect);
  const rows: Written[][] = [];
  const meant = new Map<number, { line: MeantLine; mistake: Field | null }>();
  if (rng.chance(0.25)) rows.push([text(rng.pick(SHEET_TITLES[dialect.language]))]);
  if (rows.length > 0 && rng.chance(0.5)) rows.push([]);
  rows.push(columns.map(({ heading }) => text(heading)));
  const lines = drawLines(rng, dialect, shop);
  for (const [index, line] of lines.entries()) {
    rows.push(...drawBetween(rng, columns, lines.slice(0, index), dialect));
    const mistake = rng.chance(0.04) ? drawMistake(rng) : null;
    const first = lines[index - 1]?.order !== line.order;
    rows.push(drawRow(rng, columns, { line, mistake, first }, dialect, shop));
    meant.set(rows.length + (dialect.named ? 1 : 0), { line, mistake: mistake?.field ?? null });
  }
  if (rng.chance(0.3)) rows.push(sumRow(rng.pick(TOTALS[dialect.language]), columns, lines, dialect));
  const bytes = await toBytes(rows, dialect);
  return {
    seed,
    name: `foreign-${seed}.${dialect.spreadsheet ? 'xlsx' : 'csv'}`,
    bytes,
    dialect,
    meant,
    columns,
    rows,
  };
}
