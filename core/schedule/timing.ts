import type { Problem } from './problem.ts';
import { finish, nextOpen } from './working-time.ts';

/** When everything happens, by operation number. */
export interface Timing {
  readonly machine: Int32Array;
  readonly changeover: Int32Array;
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** Operations placed; fewer than all when queues wait for each other in a circle. */
  placed: number;
}

export function emptyTiming(problem: Problem): Timing {
  const n = problem.operations;
  return {
    machine: new Int32Array(n).fill(-1),
    changeover: new Int32Array(n),
    start: new Float64Array(n),
    end: new Float64Array(n),
    placed: 0,
  };
}

/** Times one operation on a machine that is free from `free` and needs `seconds` of changeover; crew left aside. */
export function timeOperation(
  problem: Problem,
  timing: Timing,
  o: number,
  m: number,
  free: number,
  seconds: number,
): void {
  const open = problem.open[m]!;
  const work = problem.seconds[o * problem.machines + m]!;
  const started = problem.startedAt[o]!;
  timing.machine[o] = m;
  if (!Number.isNaN(started)) {
    timing.changeover[o] = 0;
    timing.start[o] = started;
    timing.end[o] = Math.max(finish(open, started, work), problem.input.now, lastLot(problem, timing, o));
    return;
  }
  timing.changeover[o] = seconds;
  const ready = readyAt(problem, timing, o);
  timing.start[o] = nextOpen(open, Math.max(ready, finish(open, free, seconds)));
  timing.end[o] = Math.max(finish(open, timing.start[o]!, work), lastLot(problem, timing, o));
}

/** When the job lets the operation start: not before its release, nor before the first lot of the step before. */
export function readyAt(problem: Problem, timing: Timing, o: number): number {
  const job = problem.jobOf[o]!;
  const release = problem.release[job]!;
  if (problem.firstOf[job] === o) return release;
  const before = o - 1;
  const share = problem.transferShare[before]!;
  if (share === 1) return Math.max(release, timing.end[before]!);
  const m = timing.machine[before]!;
  const lot = Math.ceil(share * problem.seconds[before * problem.machines + m]!);
  return Math.max(release, finish(problem.open[m]!, timing.start[before]!, lot));
}

/** The operation cannot end sooner: its last lot comes when the step before ends. −∞ without transfer lots. */
function lastLot(problem: Problem, timing: Timing, o: number): number {
  if (problem.firstOf[problem.jobOf[o]!] === o) return -Infinity;
  const share = problem.transferShare[o - 1]!;
  if (share === 1) return -Infinity;
  const m = timing.machine[o]!;
  const lot = Math.ceil(share * problem.seconds[o * problem.machines + m]!);
  return finish(problem.open[m]!, timing.end[o - 1]!, lot);
}
