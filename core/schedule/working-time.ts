/** Open from `start` up to but not including `end`. */
export interface OpenInterval {
  readonly start: number;
  readonly end: number;
}

/** Instants from here on mean "never": the machine has no open hours left. Far above any epoch second. */
export const NEVER = 1e14;

/**
 * A machine's open hours: ascending, disjoint, half-open intervals. A last one from NEVER on stands for "no open hours
 * left", so that adding work never fails: work that does not fit simply ends at NEVER or later.
 */
export interface WorkingTime {
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** Where the last look-up ended. It changes no answer: the next one is mostly near. */
  readonly last: Int32Array;
}

/** Compiles open hours that end after `from`; null means always open. Intervals must be ascending and disjoint. */
export function workingTime(open: readonly OpenInterval[] | null): WorkingTime {
  const last = new Int32Array(1);
  if (open === null) return { start: Float64Array.of(-NEVER), end: Float64Array.of(10 * NEVER), last };
  return {
    last,
    start: Float64Array.from([...open.map((i) => i.start), NEVER]),
    end: Float64Array.from([...open.map((i) => i.end), 10 * NEVER]),
  };
}

/** Index of the first interval that ends after `instant`: it holds the instant, or opens next. */
export function intervalAt(time: WorkingTime, instant: number): number {
  const { end, last } = time;
  const near = last[0]!;
  if (end[near]! > instant && (near === 0 || end[near - 1]! <= instant)) return near;
  let low = 0;
  let high = end.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (end[middle]! > instant) high = middle;
    else low = middle + 1;
  }
  last[0] = low;
  return low;
}

/** The instant itself if the machine is open then, else the next opening. */
export function nextOpen(time: WorkingTime, instant: number): number {
  return Math.max(instant, time.start[intervalAt(time, instant)]!);
}

/**
 * When `seconds` of work started at `instant` are done, pausing while closed. Zero seconds are done at once, at `instant`
 * itself, open or not; an end may fall on a closing instant.
 */
export function finish(time: WorkingTime, instant: number, seconds: number): number {
  if (seconds === 0) return instant;
  let k = intervalAt(time, instant);
  let at = Math.max(instant, time.start[k]!);
  let left = seconds;
  while (left > time.end[k]! - at) {
    left -= time.end[k]! - at;
    k += 1;
    at = time.start[k]!;
  }
  return at + left;
}

/**
 * The latest instant with exactly `seconds` of open time before `instant` (a changeover runs right up to its
 * operation). If the open hours before `instant` are too short, the first opening.
 */
export function rewind(time: WorkingTime, instant: number, seconds: number): number {
  if (seconds === 0) return instant;
  let k = intervalAt(time, instant);
  let at = instant;
  if (at <= time.start[k]! && k > 0) at = time.end[--k]!;
  let left = seconds;
  while (left > at - time.start[k]!) {
    left -= at - time.start[k]!;
    if (k === 0) return time.start[0]!;
    at = time.end[--k]!;
  }
  return at - left;
}

/** Seconds of [from, to) in which the machine is open. */
export function openSecondsBetween(open: WorkingTime, from: number, to: number): number {
  let sum = 0;
  for (let k = intervalAt(open, from); k < open.start.length && open.start[k]! < to; k++)
    sum += Math.max(0, Math.min(open.end[k]!, to) - Math.max(open.start[k]!, from));
  return sum;
}
