import { openSecondsBetween } from '../schedule/working-time.ts';
import type { WorkingTime } from '../schedule/working-time.ts';
import type { Started } from './started.ts';

/**
 * How long an operation under way takes from its start to its end, in open seconds of its machine: what went by until
 * `now`, pauses too, and what is left from now on. While pieces are counted, what is left is the estimate's share of
 * those that are not; before the first count it is the estimate less the time worked. At least the last piece is always
 * left, since it is not reported done; so the end is after `now` however long it has taken.
 * @param estimate whole seconds for all `quantity` pieces, 1 or more
 */
export function secondsOfStarted(
  { at, counted, pauses }: Started,
  quantity: number,
  estimate: number,
  open: WorkingTime,
  now: number,
): number {
  const gone = openSecondsBetween(open, startedBy(at, now), now);
  const paused = pauses.reduce(
    (sum, { from, to }) => sum + openSecondsBetween(open, startedBy(from, now), startedBy(to ?? now, now)),
    0,
  );
  const left = counted > 0 ? estimate * (1 - counted / quantity) : estimate - (gone - paused);
  return gone + Math.ceil(Math.max(left, estimate / quantity));
}

/** When something has happened that is on record: a clock that was set back since does not put it into the future. */
export const startedBy = (at: number, now: number): number => Math.min(at, now);

/** How long work that was set aside still takes once it goes on: the estimate's share of the pieces that are not counted. */
export const secondsOfSuspended = ({ counted }: Started, quantity: number, estimate: number): number =>
  Math.ceil(estimate * Math.max(1 - counted / quantity, 1 / quantity));
