import { cutsOf } from '../cutting/step.ts';
import { err, issue, ok, type Result } from '../result.ts';
import { change, type Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { cutCountId } from '../shop/stock.ts';
import type { FloorCommand } from './floor-commands.ts';

/**
 * Cuts of one step more, or fewer where one was a slip. Only of a list whose sheets were issued: that one stays as it is,
 * whatever is planned meanwhile. Differences add up, so that two who count at once are both right.
 */
export function countCuts(shop: Shop, { listId, step, by }: FloorCommand<'floor.cut'>): Result<Edit> {
  const run = listId.split(' ')[0] ?? listId;
  const list = shop.cutList.find(({ id }) => id === listId);
  const of = list?.steps.find(({ number }) => number === step);
  const refuse = (field: string, message: string, advice: string) =>
    err(issue(`run ${run}`, field, message, advice));
  if (!list || list.taken === null)
    return refuse('list', `No sheets are issued by this list of run ${run}.`, 'Take the sheets first.');
  if (!of) return refuse('step', `Run ${run} has no step ${step}.`, 'Look at the list as it is now.');
  const before = shop.cutCount.find(({ id }) => id === cutCountId(listId, step)) ?? null;
  const made = (before?.made ?? 0) + by;
  const cuts = cutsOf(of);
  if (made < 0 || made > cuts)
    return refuse(
      'made',
      `Step ${step} of run ${run} has ${cuts} cuts, and ${before?.made ?? 0} are counted: ${made} cannot be.`,
      'Look at the count as it is now, then correct it.',
    );
  const row = before ?? { id: cutCountId(listId, step), listId, step, made: 0, revision: 0 };
  return ok({
    label: `Count ${by < 0 ? '−' : '+'}${Math.abs(by)} cuts of step ${step} of run ${run}`,
    changes: by === 0 ? [] : [change('cutCount', before, { ...row, made })],
  });
}
