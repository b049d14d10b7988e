import type { ProblemInput } from '../../../core/schedule/problem.ts';
import type { ShopBySecond } from './by-the-second.ts';

type Queue = readonly number[];

/**
 * Every way to queue a small shop's operations, as numbers by machine: first who does what, then every order of each
 * queue that leaves started, frozen and pinned operations where they belong.
 */
export function* everyPlan(shop: ShopBySecond): Generator<readonly Queue[]> {
  if (shop.input.sameOrder) return yield* everyOrder(shop);
  const orders = new Map<string, Queue[]>();
  const ordersOn = (m: number, work: Queue) => {
    const key = `${m}: ${work.join()}`;
    if (!orders.has(key))
      orders.set(
        key,
        [...permutations(work)].filter((queue) => keepsFixed(shop, m, queue)),
      );
    return orders.get(key)!;
  };
  for (const homes of assignments(shop)) {
    const work = shop.input.machines.map((_, m) => [...homes.keys()].filter((o) => homes[o] === m));
    yield* product(work.map((list, m) => ordersOn(m, list)));
  }
}

/** One order of the jobs on all machines. */
function* everyOrder({ steps, input }: ShopBySecond): Generator<readonly Queue[]> {
  for (const order of permutations([...input.jobs.keys()]))
    yield input.machines.map((_, m) =>
      order.flatMap((j) =>
        steps.filter((step) => step.job === j && step.own[m]! >= 0).map((step) => step.number),
      ),
    );
}

/** The least objective over every plan; Infinity when none can be carried out. */
export function leastOf(shop: ShopBySecond): { readonly objective: number; readonly plans: number } {
  let objective = Infinity;
  let plans = 0;
  for (const queues of everyPlan(shop)) {
    plans += 1;
    objective = Math.min(objective, shop.objective(queues) ?? Infinity);
  }
  return { objective, plans };
}

export function* permutations<T>(items: readonly T[]): Generator<T[]> {
  if (items.length === 0) yield [];
  for (const [k, item] of items.entries())
    for (const rest of permutations(items.toSpliced(k, 1))) yield [item, ...rest];
}

function* assignments({ steps, input }: ShopBySecond, homes: number[] = []): Generator<readonly number[]> {
  const step = steps[homes.length];
  if (step === undefined) return yield homes;
  for (const m of input.machines.keys())
    if (step.own[m]! >= 0) yield* assignments({ steps, input } as ShopBySecond, [...homes, m]);
}

function* product(
  lists: readonly (readonly Queue[])[],
  chosen: readonly Queue[] = [],
): Generator<readonly Queue[]> {
  const list = lists[chosen.length];
  if (list === undefined) return yield chosen;
  for (const queue of list) yield* product(lists, [...chosen, queue]);
}

function keepsFixed({ steps, input }: ShopBySecond, m: number, queue: Queue): boolean {
  const machine = input.machines[m]!.id;
  const ids = queue.map((o) => steps[o]!.id);
  const front = frontOn(input, machine);
  const pins = (input.pins ?? []).filter((pin) => pin.machine === machine);
  const elsewhere = input.machines
    .filter(({ id }) => id !== machine)
    .flatMap(({ id }) => [...frontOn(input, id), ...pinsOn(input, id)]);
  return (
    front.every((id, k) => ids[k] === id) &&
    !ids.some((id) => elsewhere.includes(id)) &&
    // A position beyond the queue's end means last.
    pins.every((pin) => ids.indexOf(pin.operation) === Math.min(pin.position, ids.length - 1))
  );
}

const pinsOn = (input: ProblemInput, machine: string) =>
  (input.pins ?? []).filter((pin) => pin.machine === machine).map((pin) => pin.operation);

function frontOn(input: ProblemInput, machine: string): string[] {
  const started = input.jobs.flatMap((job) => job.operations).filter((o) => o.started?.machine === machine);
  return [...new Set([...started.map((o) => o.id), ...(input.frozen?.[machine] ?? [])])];
}
