import { lineOfOperation } from '../shop/order.ts';
import type { Pause, OperationRecord } from '../shop/plan.ts';
import { err, ok, issue, type Result } from '../result.ts';
import { openSecondsBetween, workingTime, type WorkingTime } from '../schedule/working-time.ts';

/** An operation under way. */
export interface Started {
  readonly machineId: string;
  readonly at: number;
  /** Pieces finished so far, good and scrapped. */
  readonly counted: number;
  readonly pauses: readonly Pause[];
}

export const startedOf = ({ machineId, start, good: fine, scrapped, pauses }: OperationRecord): Started => ({
  machineId,
  at: start,
  counted: fine + scrapped,
  pauses,
});

/** Whether started work has left its machine to others: it stands still, and was set aside. */
export function isSuspended({ end, pauses }: Pick<OperationRecord, 'end' | 'pauses'>): boolean {
  const last = pauses.at(-1);
  return end === null && last?.to === null && last.suspended === true;
}

/** When work left its machine, done or set aside; null while it holds it. Epoch seconds. */
export const leftAt = (record: OperationRecord): number | null =>
  isSuspended(record) ? (record.pauses.at(-1)?.from ?? null) : record.end;

/** The stretches of time in which an operation held its machine, set-aside time left out; the last may have no end yet. */
export function spansOn({ start, end, pauses }: Pick<OperationRecord, 'start' | 'end' | 'pauses'>): Span[] {
  const spans: Span[] = [];
  let from: number | null = start;
  for (const pause of pauses) {
    if (!pause.suspended || from === null) continue;
    spans.push({ start: from, end: pause.from });
    from = pause.to;
  }
  if (from !== null) spans.push({ start: from, end: end ?? Infinity });
  return spans;
}

interface Span {
  readonly start: number;
  readonly end: number;
}

/**
 * Seconds that somebody worked on it until `now`: open time of its machine, neither paused nor set aside, so that a night
 * or a break that nobody paused for is no work. What lies outside open hours altogether was worked then, and counts as it
 * was.
 * @param open hours of its machine, from its start on at least
 */
export function workedSeconds(
  { start, end, pauses }: Pick<OperationRecord, 'start' | 'end' | 'pauses'>,
  now: number,
  open: WorkingTime,
): number {
  const until = Math.max(start, end ?? now);
  const hours = openSecondsBetween(open, start, until) > 0 ? open : ALWAYS;
  return pauses.reduce(
    (left, { from, to }) => left - openSecondsBetween(hours, from, Math.min(to ?? until, until)),
    openSecondsBetween(hours, start, until),
  );
}

const ALWAYS = workingTime(null);

/** Machines that can do an operation, and those of its stage that cannot, with the reason. */
export interface Eligible<M> {
  readonly machines: readonly M[];
  readonly refused: readonly { readonly machineId: string; readonly reason: string }[];
}

/** Work that was set aside goes on where it was started. */
export function onlyWhereStarted<M extends { readonly id: string }>(
  id: string,
  { machineId }: Started,
  { machines, refused }: Eligible<M>,
): Result<Eligible<M>> {
  const others = machines
    .filter((m) => m.id !== machineId)
    .map((m) => ({ machineId: m.id, reason: `It was started on ${machineId} and suspended there.` }));
  if (others.length < machines.length)
    return ok({ machines: machines.filter((m) => m.id === machineId), refused: [...refused, ...others] });
  const message = `${id} was started on ${machineId} and suspended, and ${machineId} cannot do it any more.`;
  return err(issue(`line ${lineOfOperation(id)}`, 'machine', message, 'Correct the limits of the machine.'));
}
