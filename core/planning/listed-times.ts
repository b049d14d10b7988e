import { estimateList } from '../estimate/shear-list.ts';
import type { Queues } from '../schedule/problem.ts';
import type { ShopOperation } from './operations.ts';
import { metalRuns } from './runs.ts';
import type { Shop } from '../shop/state.ts';
import type { CutList } from '../shop/stock.ts';

/**
 * Shear operations timed by the step list that is kept for them (changed by hand, or sheets taken for it), where there
 * is one; all others keep the estimate of their line alone.
 *
 * Only kept lists count, and a list counts only while all its lines still to be cut stand in one run of one shear's
 * queue. So times depend on the stored queue and the stored lists, never on other times: what is decoded cannot change
 * what it was decoded from. Lists that the screens merely propose are left out on purpose: they take seconds to compute,
 * get better while one looks, and change with every drag; a plan whose bars move by themselves is no plan. The search
 * takes these times as given, like any other.
 */
export function withListedTimes(
  shop: Shop,
  operations: readonly ShopOperation[],
  queues: Queues,
): ShopOperation[] {
  if (shop.cutList.length === 0) return [...operations];
  const byId = new Map(operations.map((o) => [o.id, o]));
  const timed = new Map<string, ShopOperation>();
  for (const machine of shop.machine) {
    if (machine.stage !== 'shear') continue;
    const queue = (queues[machine.id] ?? []).flatMap((id) => byId.get(id) ?? []);
    for (const run of metalRuns(queue)) {
      for (const list of newestFirst(shop.cutList)) {
        const own = coveredBy(list, run, operations).filter(({ id }) => !timed.has(id));
        const lines = own.map(({ line, quantity, blank }) => ({ id: line.id, quantity, blank }));
        const times = estimateList(list, lines, machine, shop.settings.transferShare);
        for (const operation of own) {
          const time = times.get(operation.line.id);
          if (!time) continue;
          const { estimate, lotShare } = time;
          const machines = operation.machines.map((able) =>
            able.id === machine.id ? { ...able, seconds: estimate.seconds, estimate } : able,
          );
          timed.set(operation.id, { ...operation, machines, lotShare });
        }
      }
    }
  }
  return operations.map((operation) => timed.get(operation.id) ?? operation);
}

const newestFirst = (lists: readonly CutList[]): CutList[] =>
  lists.toSorted((a, b) => (b.taken ?? 0) - (a.taken ?? 0));

/** The run's operations that a list cuts to the last piece; none when a line of it waits elsewhere. */
function coveredBy(
  list: CutList,
  run: readonly ShopOperation[],
  operations: readonly ShopOperation[],
): ShopOperation[] {
  const named = new Set(list.lines);
  const waiting = operations.filter(({ stage, line }) => stage === 'shear' && named.has(line.id));
  const own = run.filter(({ line }) => named.has(line.id));
  const isWhole = ({ line, quantity }: ShopOperation): boolean =>
    list.steps.reduce((sum, { lines }) => sum + (lines.find((l) => l.line === line.id)?.pieces ?? 0), 0) >=
    quantity;
  return own.length === waiting.length && own.every(isWhole) ? own : [];
}
