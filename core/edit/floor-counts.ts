import { blanksOf } from '../planning/blanks.ts';
import { piecesFor } from '../planning/routing.ts';
import { ok, type Result } from '../result.ts';
import { lineOfOperation, stageOfOperation } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { change, type Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { underWay, type FloorCommand } from './floor-commands.ts';
import { operationName } from './plan-commands.ts';
import { refuse } from './refuse.ts';

type Counts = Pick<OperationRecord, 'good' | 'scrapped'>;

/** Pieces finished since the last count, fewer where one was a slip. */
export function countPieces(shop: Shop, command: FloorCommand<'floor.count'>): Result<Edit> {
  const { operation: id, good: fine, scrapped } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  const counts = countedOn(shop, record, command);
  if (!counts.ok) return counts;
  const signed = (by: number, what: string): string[] =>
    by === 0 ? [] : [`${by > 0 ? '+' : '−'}${Math.abs(by)} ${what}`];
  const by = [...signed(fine, 'good'), ...signed(scrapped, 'scrapped')].join(', ');
  return ok({
    label: `Count ${by || 'nothing'} of ${operationName(id)}`,
    changes: by === '' ? [] : [change('record', record, { ...record, ...counts.value })],
  });
}

/**
 * What is counted with so many more. Differences add up whoever counts: two at once are both right. Spoiled pieces may be
 * replaced at once, so only the good ones are held against the quantity.
 */
export function countedOn(shop: Shop, record: OperationRecord, by: Counts): Result<Counts> {
  const name = operationName(record.id);
  const counts = { good: record.good + by.good, scrapped: record.scrapped + by.scrapped };
  if (counts.good < 0 || counts.scrapped < 0)
    return refuse(
      record.id,
      counts.good < 0 ? 'good' : 'scrapped',
      `${record.good} good and ${record.scrapped} scrapped pieces of ${name} are counted; fewer than none cannot be.`,
      'Look at the count as it is now, then correct it.',
    );
  const pieces = piecesOf(shop, record);
  if (counts.good <= pieces) return ok(counts);
  return refuse(
    record.id,
    'good',
    `${name} makes ${pieces} pieces, so ${counts.good} cannot be good.`,
    `Count at most ${pieces}; change the quantity in Orders first if more are wanted.`,
  );
}

/**
 * Pieces that an operation under way has to make: those that its line needs of it, at the shear the blanks to set up and
 * the spare ones too; no fewer than are counted as good, for those are made.
 */
export function piecesOf(shop: Shop, record: OperationRecord): number {
  const needed = neededOf(shop, record);
  const line = shop.line.find(({ id }) => id === lineOfOperation(record.id));
  const isShear = stageOfOperation(record.id) === 'shear';
  return Math.max(record.good, isShear && line ? blanksOf(shop, line) : needed);
}

/**
 * Good pieces that a line needs of an operation: what it asks now, less what the step before has scrapped. Of a line that
 * is gone, what the operation began with.
 */
export function neededOf(shop: Shop, { id, quantity }: OperationRecord): number {
  const lineId = lineOfOperation(id);
  const asked = shop.line.find((line) => line.id === lineId)?.quantity ?? quantity;
  const records = new Map(shop.record.map((r) => [r.id, r]));
  return piecesFor({ id: lineId, quantity: asked }, stageOfOperation(id), records);
}
