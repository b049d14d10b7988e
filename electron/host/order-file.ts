import { existsSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { applyCommand } from '../../core/edit/apply.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import type { Answers } from '../../core/import/answers.ts';
import { importKinds } from '../../core/import/kinds.ts';
import { readFile } from '../../core/import/read-file.ts';
import type { Reading } from '../../core/import/reading.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Instant } from '../../core/units/brand.ts';
import { Refused, valueOf } from '../refused.ts';
import { readGrid } from '../service/table-file.ts';

/** A shop with the orders of a file added, as the command line does it: all of them or none. */
export interface WithOrders {
  readonly shop: Shop;
  /** The lines that came from the file. */
  readonly lineIds: readonly string[];
}

/** @throws Refused naming every wrong cell and every open question, or saying that there is nothing new in the file */
export async function addOrdersOf(
  file: string,
  shop: Shop,
  now: Instant,
  answers: Answers = {},
): Promise<WithOrders> {
  const fileName = basename(file);
  const grid = await readGrid(fileName, readBytes(file), answers.sheet);
  const past = { order: () => false, line: () => false, record: () => null };
  const { reading, command } = readFile(importKinds.orders, { shop, fileName, grid, answers, now, past });
  const troubles = [...reading.questions.map(({ words }) => `  ${words}`), ...wrongCells(reading)];
  if (troubles.length > 0)
    throw new Refused(
      'bad-input',
      [
        `${fileName} cannot be read as it is; nothing was planned. Fix the file, then try again.`,
        ...troubles,
      ].join('\n'),
    );
  if (command?.do !== 'orders.import' || command.lines.length === 0)
    throw new Refused(
      'bad-input',
      reading.counts.known > 0
        ? `Every line of ${fileName} already exists in the shop; nothing was planned. Name a file with new lines.`
        : `${fileName} has a header but no orders. Add one row a line.`,
    );
  const { changes } = valueOf(applyCommand(shop, command));
  return { shop: withChanges(shop, changes), lineIds: command.lines.map(({ id }) => id) };
}

const wrongCells = ({ rows }: Reading): string[] =>
  rows
    .filter(({ state }) => state === 'wrong')
    .flatMap(({ row, words, cells }) => [
      ...(words === '' ? [] : [`  row ${row}: ${words}`]),
      ...cells.flatMap(({ field, issue }) =>
        issue === undefined ? [] : [`  row ${row}, ${field}: ${issue}`],
      ),
    ]);

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
