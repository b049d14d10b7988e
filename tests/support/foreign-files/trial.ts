import type { Answers } from '../../../core/import/answers.ts';
import { orderFiles } from '../../../core/import/orders.ts';
import { type FileRead, readFile } from '../../../core/import/read-file.ts';
import type { Question, RowReading } from '../../../core/import/reading.ts';
import type { OrderLine, WorkOrder } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { readGrid } from '../../../electron/service/table-file.ts';
import { aColour, aMaterial, aPart, aShop, NOW, someSettings, ZONE } from '../builders.ts';
import { type ForeignFile, foreignFile, type ShopWords } from './foreign-file.ts';
import { type Field, FIELDS } from './headings.ts';
import { clock, iso, lengthMm, type MeantLine } from './meant.ts';

/** What became of a file's cells. */
export interface Tally {
  cells: number;
  /** Taken at once, as they were meant. */
  taken: number;
  /** In rows that wait for an answer. */
  asked: number;
  /** In rows that are shown as wrong. */
  refused: number;
  /** Cells that somebody got right, in rows that are not taken even when all questions are answered. */
  lost: number;
  /** Taken as something else than was meant: a sentence each. */
  readonly misread: string[];
  /** How many questions were asked. */
  questions: number;
}

const WORDS: Readonly<Record<'in' | 'mm', ShopWords>> = {
  in: {
    units: 'in',
    parts: ['corner', 'flat-strip'],
    colours: { bone: ['bone', 'Bone white', 'BONE'], moss: ['moss', 'Moss green'] },
    gauges: {
      '24': { named: ['24', '24 ga', '#24'], hundredths: 70 },
      '26': { named: ['26'], hundredths: 55 },
    },
  },
  mm: {
    units: 'mm',
    parts: ['corner', 'flat-strip'],
    colours: { bone: ['bone', 'Bone white', 'BONE'], moss: ['moss', 'Moss green'] },
    gauges: {
      '0.7': { named: ['0.7', '0.70', '0.7 mm'], hundredths: 70 },
      '0.55': { named: ['0.55', '0.55 mm'], hundredths: 55 },
    },
  },
};

/** The shop that files are read for: by their number in inches or millimetres, with points or commas. */
function shopFor(seed: number): { shop: Shop; words: ShopWords } {
  const units = seed % 2 === 0 ? 'in' : 'mm';
  const words = WORDS[units];
  // Gauges of galvanized sheet are 0.0276 and 0.0217 in thick: 0.70 and 0.55 mm.
  const inches: Readonly<Record<string, number>> = { '24': 0.0276, '26': 0.0217 };
  const gauges = Object.entries(words.gauges).map(([label, { hundredths }]) => ({
    label,
    thicknessMm: label in inches ? inches[label]! * 25.4 : hundredths / 100,
    kgPerM2: 5,
  }));
  const settings = someSettings({ units, decimals: seed % 4 < 2 ? 'point' : 'comma' });
  const machines = aShop().machine.map((one) => ({ ...one, maxLengthMm: 7000 }));
  const shop = aShop({
    settings,
    material: [aMaterial({ gauges })],
    colour: [aColour({ id: 'bone', name: 'Bone white' }), aColour()],
    sheet: [],
    part: words.parts.map((id) => aPart({ id, name: id })),
    machine: machines,
    order: [],
    line: [],
    downtime: [],
  });
  return { shop, words };
}

type TakenLine = OrderLine & { readonly of: WorkOrder };

function takenLines({ command }: FileRead): Map<string, TakenLine> {
  if (command?.do !== 'orders.import') return new Map();
  const orders = new Map(command.orders.map((order) => [order.id, order]));
  return new Map(
    command.lines.map((line) => [`line ${line.id}`, { ...line, of: orders.get(line.orderId)! }]),
  );
}

/** "2026-12-04 17:00" on the shop's wall clock, by the system's own calendar and not by ours. */
const onTheWall = new Intl.DateTimeFormat('sv-SE', {
  timeZone: ZONE,
  dateStyle: 'short',
  timeStyle: 'short',
});
const dayOf = (at: number): string => onTheWall.format(at * 1000).slice(0, 10);
const clockOf = (at: number): string => onTheWall.format(at * 1000).slice(11);

/** What a line that is taken says otherwise than its writer meant. @param has the columns that the file has */
function differences(line: TakenLine, meant: MeantLine, has: ReadonlySet<string>): string[] {
  const [due, release] = [line.due ?? line.of.due, line.release ?? line.of.release];
  const off = Math.abs(line.lengthMm - lengthMm(meant.length)) > 0.01;
  const found: (readonly [Field, string, string])[] = [
    ['order', line.orderId, meant.order],
    ['line', String(line.number), String(meant.line)],
    ['customer', line.of.customer, meant.customer],
    ['part', line.partId, meant.part],
    ['quantity', String(line.quantity), String(meant.quantity)],
    ['gauge', line.gauge, meant.gauge],
    ['colour', line.colourId, meant.colour],
    ['length', off ? `${line.lengthMm} mm` : '', off ? `${lengthMm(meant.length)} mm` : ''],
    ['release', release === null ? '' : dayOf(release), iso(meant.release)],
    ['due', dayOf(due), iso(meant.due)],
    ['note', line.note || line.of.note, meant.note],
  ];
  if (meant.dueMinutes !== null) found.push(['due', clockOf(due), clock(meant.dueMinutes)]);
  return found
    .filter(([field, taken, said]) => has.has(field) && taken !== said)
    .map(([field, taken, said]) => `${field} ${said} was taken as ${taken}`);
}

/**
 * The columns that must be read as they were meant. What is not found of those a line can do without is left out, and the
 * file's notes say so.
 */
function columnsOf(file: ForeignFile, { reading }: FileRead): Set<string> {
  const optional: readonly string[] = ['note', 'release', 'line'];
  return new Set(
    file.columns
      .map(({ is }) => is as string)
      .filter((is) => !optional.includes(is) || reading.columns.some(({ field }) => field === OURS[is])),
  );
}
/** Our own name of a field where it is another. */
const OURS: Readonly<Record<string, string>> = { note: 'note', line: 'line', release: 'not before' };

const ourColumns = (file: ForeignFile): number =>
  file.columns.filter(({ is }) => (FIELDS as readonly string[]).includes(is)).length;

/** Compares what is taken with what was meant, and counts what became of the cells. */
function judge(
  file: ForeignFile,
  read: FileRead,
  tally: Pick<Tally, 'taken' | 'asked' | 'refused' | 'misread'>,
): void {
  const lines = takenLines(read);
  const has = columnsOf(file, read);
  const rows = new Map(read.reading.rows.map((row) => [row.row, row]));
  const ours = ourColumns(file);
  const blame = (row: number, words: string): void =>
    void tally.misread.push(`file ${file.seed}, row ${row}: ${words}`);
  for (const [row, { line, mistake }] of file.meant) {
    const found = rows.get(row);
    if (!found) blame(row, 'a line was left out as if it were none');
    else if (found.state === 'waiting') tally.asked += ours;
    else if (found.state === 'wrong') tally.refused += ours;
    else if (mistake) blame(row, `the ${mistake} cannot be known, and the row was taken`);
    else {
      const taken = lines.get(found.subject);
      const wrong = taken ? differences(taken, line, has) : [`${found.subject} is not among what is taken`];
      for (const words of wrong) blame(row, words);
      tally.taken += ours - Math.min(ours, wrong.length);
    }
  }
  for (const { row, state } of read.reading.rows)
    if (!file.meant.has(row) && ['new', 'changed', 'known'].includes(state))
      blame(row, 'was taken and is no line');
}

/** What the writer of a file says when asked; what stands in cells that are mistakes cannot be said. */
function answersOf(file: ForeignFile, questions: readonly Question[]): Answers {
  const { dialect } = file;
  const columns: Record<string, string> = {};
  const decimals: Record<string, 'point' | 'comma'> = {};
  const dates: Record<string, 'dmy' | 'mdy' | 'ymd'> = {};
  for (const question of questions) {
    const { field } = question;
    if (question.is === 'column')
      columns[field] = file.columns.find(({ is }) => (OURS[is] ?? is) === field)?.heading ?? '';
    if (question.is === 'decimals')
      decimals[field] = dialect.length.number.decimal === ',' ? 'comma' : 'point';
    const { form } = dialect.due;
    if (question.is === 'dates' && form.kind === 'figures') dates[field] = form.order;
  }
  return { columns, decimals, dates };
}

const lost = (file: ForeignFile, rows: readonly RowReading[]): number =>
  rows.filter(
    ({ row, state }) => ['wrong', 'waiting'].includes(state) && file.meant.get(row)?.mistake === null,
  ).length;

/** Reads the file with this number, then once more with its questions answered, and adds what came of it. */
export async function tryFile(seed: number, tally: Tally): Promise<ForeignFile> {
  const { shop, words } = shopFor(seed);
  const file = await foreignFile(seed, words);
  const grid = await readGrid(file.name, file.bytes);
  const past = { order: () => false, line: () => false, record: () => null };
  const read = (answers: Answers): FileRead =>
    readFile(orderFiles, { shop, fileName: file.name, grid, answers, now: NOW, past });
  const first = read({});
  judge(file, first, tally);
  tally.cells += file.meant.size * ourColumns(file);
  tally.questions += first.reading.questions.length;
  const second = read(answersOf(file, first.reading.questions));
  const after = { taken: 0, asked: 0, refused: 0, misread: [] as string[] };
  judge(file, second, after);
  tally.misread.push(...after.misread.map((words) => `answered, ${words}`));
  tally.lost += lost(file, second.reading.rows) * ourColumns(file);
  return file;
}

export const emptyTally = (): Tally => ({
  cells: 0,
  taken: 0,
  asked: 0,
  refused: 0,
  lost: 0,
  misread: [],
  questions: 0,
});
