import { issue, type Issue } from '../result.ts';
import type { ProblemInput } from './problem.ts';
import { canDo, frontOf } from './validate-fixed.ts';

/**
 * Fixed operations that wait for each other in a circle, so that no queues could be carried out: by the order of a line's
 * steps, and by the order in which machines take what is started, frozen or pinned. Only where routings cross or come back.
 */
export function circleProblems(input: ProblemInput): Issue[] {
  if (!input.pins?.length && !Object.keys(input.frozen ?? {}).length) return [];
  const before = new Map<string, string[]>();
  const follows = (earlier: string, later: string) =>
    before.set(later, [...(before.get(later) ?? []), earlier]);
  for (const job of input.jobs)
    job.operations.forEach((operation, k) => {
      if (k > 0) follows(job.operations[k - 1]!.id, operation.id);
    });
  for (const { id } of input.machines) {
    const { order, head } = fixedOrder(input, id);
    order.forEach((operation, k) => {
      if (k > 0) follows(order[k - 1]!, operation);
    });
    const last = order[head - 1];
    if (last === undefined) continue;
    for (const other of onlyOn(input, id)) if (!order.includes(other)) follows(last, other);
  }
  const circle = circleIn(before);
  if (circle === null) return [];
  return [
    issue(
      `operation ${circle[0]}`,
      'pin',
      `These operations are pinned or frozen so that they wait for each other in a circle: ${circle.join(', ')}.`,
      'Remove one of these pins.',
    ),
  ];
}

/** A machine's fixed operations in their order; the first `head` of them surely come before all others. */
function fixedOrder(input: ProblemInput, machine: string): { order: string[]; head: number } {
  const front = frontOf(input, machine);
  const pins = (input.pins ?? [])
    .filter((pin) => pin.machine === machine && !front.includes(pin.operation))
    .sort((a, b) => a.position - b.position);
  const gap = pins.findIndex((pin, k) => pin.position > front.length + k);
  return {
    order: [...front, ...pins.map((pin) => pin.operation)],
    head: front.length + (gap === -1 ? pins.length : gap),
  };
}

/** Operations that no other machine can do. */
function onlyOn(input: ProblemInput, machine: string): string[] {
  return input.jobs
    .flatMap((job) => job.operations)
    .filter((o) => input.machines.every(({ id }) => canDo(input, o, id) === (id === machine)))
    .map((o) => o.id);
}

/** Operations that come before each other in a circle, first to last; null when there is none. */
function circleIn(before: ReadonlyMap<string, readonly string[]>): string[] | null {
  const cleared = new Set<string>();
  for (const start of before.keys()) {
    const path = [start];
    while (path.length > 0) {
      const next = (before.get(path.at(-1)!) ?? []).find((id) => !cleared.has(id));
      if (next === undefined) cleared.add(path.pop()!);
      else if (path.includes(next)) return path.slice(path.indexOf(next)).reverse();
      else path.push(next);
    }
  }
  return null;
}
