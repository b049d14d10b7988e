import { join } from 'node:path';
import type { OrderLine, WorkOrder } from '../../core/shop/order.ts';
import type { OperationRecord } from '../../core/shop/plan.ts';
import { change } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';
import { instant } from '../../core/units/brand.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { openStore, type Work } from '../../electron/db/open.ts';
import { putShop } from '../../electron/service/begin.ts';

/** Monday of the invented week, 06:10 in Chicago, as the window tests have it. */
export const MONDAY = instant(Date.parse('2026-11-30T12:10:00Z') / 1000);
const root = join(import.meta.dirname, '../..');
const WEEK = 7 * 86_400;
const LINES_A_WEEK = 500;
const LINES_AN_ORDER = 4;
const STAGES = ['shear', 'brake'] as const;

/**
 * A data file of a shop that has worked for years: the demo's open work, a last week's finished lines, and `lines` more
 * from before that week, with what was recorded, reported and taken from stock.
 */
export function makeYears(file: string, lines: number): void {
  const shop = loadDemo(join(root, 'demo-data', 'shop'), MONDAY);
  const log = { info: () => undefined, error: console.error };
  const store = openStore(file, { migrations: join(root, 'migrations'), stamp: 'bench', log });
  store.run('bench', (work) => putShop(work, shop));
  const recent = LINES_A_WEEK / LINES_AN_ORDER;
  const orders = recent + Math.ceil(lines / LINES_AN_ORDER);
  for (let from = 0; from < orders; from += 1000)
    store.run('bench', (work) => {
      for (let i = from; i < Math.min(orders, from + 1000); i++)
        putOrder(work, shop, i, Math.min(LINES_AN_ORDER, lines + LINES_A_WEEK - i * LINES_AN_ORDER));
    });
  store.close();
}

/** The order closed `back` before the newest, with its lines, operations and what was taken for it. */
function putOrder(work: Work, shop: Shop, back: number, lines: number): void {
  const closedAt = instant(MONDAY - Math.round(((back * LINES_AN_ORDER) / LINES_A_WEEK) * WEEK) - 60);
  const model = shop.order[back % shop.order.length]!;
  const order: WorkOrder = {
    ...model,
    id: `H${back}`,
    status: 'done',
    due: closedAt,
    release: null,
    closedAt,
  };
  work.rows.put('order', order);
  for (let number = 1; number <= lines; number++) {
    const of = shop.line[(back * LINES_AN_ORDER + number) % shop.line.length]!;
    const id = `${order.id}/${number}`;
    const line: OrderLine = { ...of, id, orderId: order.id, number, status: 'done', makeUpFor: null };
    work.rows.put('line', line);
    STAGES.forEach((stage, i) => putOperation(work, shop, line, stage, closedAt - 7200 + i * 3600 + number));
  }
  const sheet = shop.sheet[back % shop.sheet.length]!;
  work.rows.put('movement', {
    ...{ id: `${sheet.id}.${1_000_000 + back}`, sheetId: sheet.id, at: closedAt, what: 'used' },
    ...{ pieces: -3, after: 40, note: `for ${order.id}`, revision: 0 },
  });
}

function putOperation(
  work: Work,
  shop: Shop,
  line: OrderLine,
  stage: 'shear' | 'brake',
  start: number,
): void {
  const machine = shop.machine.find((one) => one.stage === stage)!;
  const { partId, materialId, gauge, colourId, lengthMm, quantity } = line;
  const record: OperationRecord = {
    ...{ id: `${line.id}:${stage}`, machineId: machine.id, partId, materialId, gauge, colourId, lengthMm },
    ...{ quantity, good: quantity, scrapped: 0, start: instant(start), end: instant(start + 1800) },
    ...{ who: [], changeoverSeconds: null, pauses: [], estimatedSeconds: 1700, revision: 2 },
  };
  work.rows.put('record', record);
  work.facts.add({
    at: start + 1800,
    keptAt: start + 1801,
    command: {
      ...{ do: 'floor.done', operation: record.id, at: instant(start + 1800) },
      ...{ good: quantity, scrapped: 0 },
    },
    label: `Finish ${line.id} ${stage}: ${quantity} good`,
    operation: record.id,
    machineId: machine.id,
    by: 'floor S1',
    corrects: null,
    reason: '',
    changes: [change('record', { ...record, end: null, good: 0 }, record)],
  });
}
