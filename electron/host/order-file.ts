import { existsSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { applyCommand } from '../../core/edit/apply.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import type { Answers } from '../../core/import/answers.ts';
import { importKinds } from '../../core/import/kinds.ts';
import { readFile, type FileRead } from '../../core/import/read-file.ts';
import type { Reading } from '../../core/import/reading.ts';
import { plainWords } from '../../core/import/words.ts';
import { quoted } from '../../core/quoted.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Instant } from '../../core/units/brand.ts';
import { counted } from '../../core/units/count.ts';
import { Refused, valueOf } from '../refused.ts';
import { readGrid } from '../service/table-file.ts';
import { answersOf, type SaidOfFile } from './order-answers.ts';
import { columnsText, issuesOf, questionsText, wrongText } from './reading-text.ts';

/** A file of orders as the command line reads it: what the options said about it, and what came of it. */
export interface OrdersRead extends FileRead {
  /** How it was read, line by line. */
  readonly words: readonly string[];
}

/** A shop with the orders of a file added: all of them or none. */
export interface WithOrders {
  readonly shop: Shop;
  /** The lines that came from the file. */
  readonly lineIds: readonly string[];
  readonly words: readonly string[];
}

export interface OrderFile {
  readonly file: string;
  readonly said: SaidOfFile;
  /** Due dates that are past are meant so. */
  readonly acceptPast: boolean;
}

/** @throws Refused with each open question and the option that answers it */
export async function readOrders(
  { file, said, acceptPast }: OrderFile,
  shop: Shop,
  now: Instant,
): Promise<OrdersRead> {
  const fileName = basename(file);
  const bytes = readBytes(file);
  const answers = answersOf(said, shop);
  const grid = await readGrid(fileName, bytes, answers.sheet);
  const past = { order: () => false, line: () => false, record: () => null };
  const read = (accept: number[]): FileRead =>
    readFile(importKinds.orders, { shop, fileName, grid, answers: { ...answers, accept }, now, past });
  const first = read([]);
  if (first.read.length === 0)
    throw new Refused('bad-input', `${fileName} has a header but no orders. Add one row a line.`);
  refuseLostColumns(first.reading, answers);
  const words = columnsText(first.reading, answers);
  if (first.reading.questions.length > 0)
    throw new Refused(
      'bad-input',
      [
        ...words,
        '',
        `${fileName} can be read in more than one way, or not in full; nothing was planned. Run the command again with an option for each question:`,
        ...questionsText(first.reading, shop),
        ...(first.reading.counts.wrong > 0 ? ['', 'Wrong in any case:', ...wrongText(first.reading)] : []),
      ].join('\n'),
    );
  const unlikely = first.reading.rows.filter(isAcceptable);
  if (!acceptPast || unlikely.length === 0) return { ...first, words };
  const meant = ['Taken as it is:', ...unlikely.flatMap(issuesOf)];
  return { ...read(unlikely.map(({ row }) => row)), words: [...words, ...meant] };
}

/** A row that is taken once somebody says that it is meant. */
const isAcceptable = ({ words, cells }: Reading['rows'][number]): boolean => {
  const wrong = cells.filter(({ issue }) => issue !== undefined);
  return words === '' && wrong.length > 0 && wrong.every(({ acceptable }) => acceptable);
};

/** A heading that the file does not have is a slip of whoever typed it. */
function refuseLostColumns(
  { fileName, columns }: Reading,
  { columns: said = {}, toNote = [] }: Answers,
): void {
  const isThere = (field: string, title: string): boolean =>
    columns.some((column) => column.field === field && column.by === 'said') ||
    columns.some((column) => column.toNote && plainWords(column.title) === plainWords(title));
  for (const [field, title] of [...Object.entries(said), ...toNote.map((title) => ['note', title] as const)])
    if (title !== '' && !isThere(field, title))
      throw new Refused(
        'bad-input',
        `--columns: ${fileName} has no column “${title}” that could be the ${field}. Its columns are ${quoted(columns.map((column) => column.title))}.`,
      );
}

/** @throws Refused naming every wrong cell and every open question, or saying that there is nothing new in the file */
export async function addOrdersOf(asked: OrderFile, shop: Shop, now: Instant): Promise<WithOrders> {
  const { reading, command, words } = await readOrders(asked, shop, now);
  const { fileName, rows, counts } = reading;
  if (counts.wrong > 0)
    throw new Refused(
      'bad-input',
      [
        ...words,
        '',
        `${fileName} has ${counted(counts.wrong, 'wrong row')}; nothing was planned. Fix the file, then try again.`,
        ...wrongText(reading),
        ...(rows.some(isAcceptable) ? ['Where past due dates are meant so, add --accept-past.'] : []),
      ].join('\n'),
    );
  if (command?.do !== 'orders.import' || command.lines.length === 0)
    throw new Refused(
      'bad-input',
      `Every line of ${fileName} already exists in the shop; nothing was planned. Name a file with new lines.`,
    );
  const { changes } = valueOf(applyCommand(shop, command));
  return { shop: withChanges(shop, changes), lineIds: command.lines.map(({ id }) => id), words };
}

function readBytes(file: string): Uint8Array {
  if (!existsSync(file)) throw new Refused('bad-input', `There is no file ${file}.`);
  try {
    return readFileSync(file);
  } catch (error) {
    if (error instanceof Error && 'code' in error)
      throw new Refused(
        'bad-input',
        `The file ${file} cannot be read (${String(error.code)}). Name a CSV file or a spreadsheet.`,
      );
    throw error;
  }
}
