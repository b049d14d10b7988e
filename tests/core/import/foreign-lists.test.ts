import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Answers } from '../../../core/import/answers.ts';
import { orderFiles } from '../../../core/import/orders.ts';
import { readFile } from '../../../core/import/read-file.ts';
import { wallParts } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { readGrid } from '../../../electron/service/table-file.ts';
import { NOW, ZONE } from '../../support/builders.ts';
import { listShop } from '../../support/list-shop.ts';

/** What its maker says of a list (tests/support/fixture-files), whatever we read. */
interface Truth {
  readonly header: number;
  readonly leftOut: { readonly blank: readonly number[]; readonly totals: readonly number[] };
  /** What the shop has, by another name. */
  readonly same: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Columns that only people read. */
  readonly toNote: readonly string[];
  readonly rows: readonly {
    readonly row: number;
    readonly means?: Readonly<Record<string, string | number>>;
    readonly wrong?: { readonly column: string; readonly text: string; readonly why: string };
  }[];
}

const folder = join(import.meta.dirname, '../../fixtures/import');

async function open(name: string) {
  const truth = JSON.parse(
    readFileSync(join(folder, name.replace(/\.\w+$/, '.truth.json')), 'utf8'),
  ) as Truth;
  const grid = await readGrid(name, readFileSync(join(folder, name)));
  const shop = listShop();
  const past = { order: () => false, line: () => false, record: () => null };
  const read = (answers: Answers) =>
    readFile(orderFiles, { shop, fileName: name, grid, answers, now: NOW, past });
  const same = Object.entries(truth.same).flatMap(([what, names]) =>
    Object.entries(names).map(([text, is]) => ({ what: what as 'part' | 'colour', text, is })),
  );
  return { truth, read, same };
}

describe.each(['auftraege.csv', 'work-orders.xlsx', 'jobs.txt'])('%s', (name) => {
  it('asks what the shop cannot know, and nothing else', async () => {
    const { truth, read, same } = await open(name);
    const { reading } = read({});
    expect(reading.header).toBe(truth.header);
    expect(
      reading.questions.map((one) => (one.is === 'same' ? `${one.what} ${one.text}` : one.words)).sort(),
    ).toEqual(same.map(({ what, text }) => `${what} ${text}`).sort());
  });

  it('shows the cells that are wrong, and takes the other rows as they were meant', async () => {
    const { truth, read, same } = await open(name);
    const { reading, command } = read({ same, toNote: truth.toNote });
    if (command?.do !== 'orders.import') throw new Error('nothing is taken');
    const column = new Map(reading.columns.map(({ field, title }) => [field, title]));
    const wrong = reading.rows.filter(({ state }) => state === 'wrong');
    expect(
      wrong.map(({ row, cells }) => [
        row,
        ...cells.flatMap(({ field, issue }) => (issue ? [column.get(field)] : [])),
      ]),
    ).toEqual(truth.rows.flatMap(({ row, wrong: slip }) => (slip ? [[row, slip.column]] : [])));
    const orders = new Map(command.orders.map((order) => [order.id, order]));
    const lines = new Map(command.lines.map((line) => [`line ${line.id}`, line]));
    const taken = reading.rows.flatMap(({ row, state, subject }) => {
      const line = lines.get(subject);
      const order = orders.get(line?.orderId ?? '');
      if (state !== 'new' || !line || !order) return [];
      const means = {
        order: order.id,
        customer: order.customer,
        part: line.partId,
        quantity: line.quantity,
        gauge: line.gauge,
        colour: line.colourId,
        note: (line.note || order.note).replace(/^Delivery instructions: /, ''),
        lengthMm: Math.round(line.lengthMm * 1e4) / 1e4,
        due: wallParts(instant(line.due ?? order.due), ZONE).date,
      };
      return [{ row, means }];
    });
    expect(taken).toEqual(truth.rows.filter(({ means }) => means));
  });
});
