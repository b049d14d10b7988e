import { isShared } from '../part/tool-set.ts';
import type { ScheduledOperation } from '../schedule/problem.ts';
import type { PlanRead } from './runs.ts';
import { attributeOf } from './set-up.ts';

/** By what is set up, the machine that had a tool of it last. */
export type Fetched = ReadonlyMap<'tools' | 'hemming', string>;

/**
 * The operations of a plan for which a tool comes from another brake, each with where it comes from.
 * @returns by operation id; those that find their tools at their own brake are not in it
 */
export function fetchedBy({ schedule, operations }: PlanRead): ReadonlyMap<string, Fetched> {
  const last = new Map<string, string>();
  const fetched = new Map<string, Fetched>();
  for (const planned of byStart(schedule.operations)) {
    const tools = operations.get(planned.operation)?.machines.find(({ id }) => id === planned.machine)?.tools;
    if (!tools) continue;
    const shared = [tools.die, tools.punch, tools.hemming].filter((tool) => tool !== null).filter(isShared);
    const away = shared.flatMap((tool) => {
      const from = last.get(tool.id);
      return from === undefined || from === planned.machine ? [] : [[attributeOf(tool), from] as const];
    });
    if (away.length > 0) fetched.set(planned.operation, new Map(away));
    for (const { id } of shared) last.set(id, planned.machine);
  }
  return fetched;
}

/** In the order in which they take their tools: no two hold one at once. */
const byStart = (operations: readonly ScheduledOperation[]): ScheduledOperation[] =>
  operations.toSorted((a, b) => a.changeoverStart - b.changeoverStart || a.end - b.end);
