import type { Machine } from '../shop/machine.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import { secondsOf, timeStandards, type Counts } from './counts.ts';
import { median } from './robust.ts';

/** A finished operation as learning sees it. */
export interface Observation {
  /** The operation's id. */
  readonly id: string;
  readonly machineId: string;
  /** When it began, epoch seconds. */
  readonly at: number;
  readonly counts: Counts;
  /** Open seconds of the machine from start to end, changeover left out. */
  readonly actualSeconds: number;
}

export const byTime = (a: Pick<Observation, 'id' | 'at'>, b: Pick<Observation, 'id' | 'at'>): number =>
  a.at - b.at || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Records whose usual ratio to the estimate lies outside 1 : 10 to 10 : 1 are of something else (our own limit). */
const ABSURD = 10;

const misread = (id: string, field: string, message: string): Issue =>
  issue(`record ${id}`, field, message, 'Correct or remove the record; the standards stay as they are.');

function troubleIn({ id, at, counts, actualSeconds }: Observation, known: ReadonlySet<string>): Issue[] {
  const found: Issue[] = [];
  if (!Number.isFinite(at)) found.push(misread(id, 'start', `Record ${id} has no start.`));
  if (!Number.isFinite(actualSeconds) || actualSeconds < 0)
    found.push(misread(id, 'end', `Record ${id} took ${actualSeconds} s, which no operation can.`));
  for (const [key, count] of Object.entries(counts)) {
    if (!known.has(key))
      found.push(misread(id, 'counts', `Record ${id} counts "${key}", which is no standard of its machine.`));
    else if (!Number.isFinite(count) || count < 0)
      found.push(misread(id, 'counts', `Record ${id} counts "${key}" ${count} times.`));
  }
  return found;
}

/**
 * One machine's observations that can be learned from, in the order of time; those of other machines do not matter.
 * @returns those with a time and an estimate above zero as `usable`, the ids of the rest as `blank`; or why nothing can
 *   be learned: none at all, a record that cannot be, times all zero, or times of another order than the estimates
 */
export function readObservations(
  machine: Pick<Machine, 'id' | 'stage' | 'standards' | 'timesEdition'>,
  observations: readonly Observation[],
): Result<{ readonly usable: readonly Observation[]; readonly blank: readonly string[] }> {
  const own = observations.filter((o) => o.machineId === machine.id).sort(byTime);
  const refuse = (field: string, message: string, advice: string) =>
    err(issue(`machine ${machine.id}`, field, message, advice));
  if (own.length === 0)
    return refuse(
      'records',
      `Machine ${machine.id} has no finished operations yet, so there is nothing to learn from.`,
      'Its standards stay as they are; look again when some work is done.',
    );
  const known = new Set(timeStandards(machine).map((s) => s.key));
  const trouble = own.flatMap((o) => troubleIn(o, known));
  if (trouble.length > 0) return err(...trouble);

  const ratio = (o: Observation): number => o.actualSeconds / secondsOf(machine, o.counts);
  const usable = own.filter((o) => ratio(o) > 0 && Number.isFinite(ratio(o)));
  if (usable.length === 0)
    return refuse(
      'records',
      `Every finished operation of machine ${machine.id} has a time or an estimate of zero.`,
      'Write down when work starts and ends; the standards stay as they are.',
    );
  const usual = median(usable.map(ratio));
  if (usual > ABSURD || usual < 1 / ABSURD)
    return refuse(
      'records',
      `Machine ${machine.id} usually took ${usual.toPrecision(2)} times its estimates: these times are of something else.`,
      'Look at starts, ends and standards; the standards stay as they are.',
    );
  const taken = new Set(usable);
  return ok({ usable, blank: own.filter((o) => !taken.has(o)).map((o) => o.id) });
}
