import type { Problem, Schedule } from '../problem.ts';

/** A job that ends at another time in one plan than in another; instants and seconds. */
export interface JobShift {
  readonly job: string;
  readonly before: number;
  readonly after: number;
  /** Seconds late, 0 when on time or without a due date. */
  readonly lateBefore: number;
  readonly lateAfter: number;
}

/** Jobs of two plans that end at different times. */
interface Shifts {
  /** Most lateness added first, then the longest shift, then by id. */
  readonly later: readonly JobShift[];
  /** The same the other way round: most lateness taken away first. */
  readonly earlier: readonly JobShift[];
}

/**
 * What one plan does to the jobs of another: everything that ends later or earlier. Jobs that are in one plan only,
 * and those in `except`, are left out.
 */
export function shiftsBetween(
  problem: Problem,
  before: Schedule['ends'],
  after: Schedule['ends'],
  except: readonly string[] = [],
): Shifts {
  const shifts = problem.input.jobs.flatMap(({ id, due }): JobShift[] => {
    const was = before[id];
    const is = after[id];
    if (was === undefined || is === undefined || was === is || except.includes(id)) return [];
    const late = (end: number) => (due === null ? 0 : Math.max(0, end - due));
    return [{ job: id, before: was, after: is, lateBefore: late(was), lateAfter: late(is) }];
  });
  const lateness = (shift: JobShift) => shift.lateAfter - shift.lateBefore;
  const delay = (shift: JobShift) => shift.after - shift.before;
  const largest = (sign: number) => (a: JobShift, b: JobShift) =>
    sign * (lateness(b) - lateness(a)) || sign * (delay(b) - delay(a)) || (a.job < b.job ? -1 : 1);
  return {
    later: shifts.filter((shift) => delay(shift) > 0).sort(largest(1)),
    earlier: shifts.filter((shift) => delay(shift) < 0).sort(largest(-1)),
  };
}

/** Of the jobs that end later, those that are late or later late than before. */
export const madeLate = (shifts: Shifts): JobShift[] =>
  shifts.later.filter((shift) => shift.lateAfter > shift.lateBefore);
