import type { Problem } from '../problem.ts';
import { johnsonOrder } from '../rules/johnson.ts';
import { fastestSeconds } from '../rules/remaining.ts';

interface Part {
  readonly head: number;
  readonly seconds: number;
  readonly tail: number;
}

/**
 * Seconds from now that no plan can undercut: the longest job; per machine that has no alternative, the one-machine
 * preemptive bound with heads and tails; and, in a two-machine flow shop without releases, Johnson's makespan.
 * Sources: J. Carlier, EJOR 11, 1982, pp. 42-47 (heads and tails, from memory); S. M. Johnson, Naval Research Logistics
 * Quarterly 1(1), 1954, pp. 61-68.
 */
export function makespanBound(problem: Problem, ends: Float64Array): number {
  const { now } = problem.input;
  let bound = Math.max(0, ...Array.from(ends, (end) => end - now));
  if (problem.transferShare.some((share) => share < 1)) return bound;
  for (let m = 0; m < problem.machines; m++) bound = Math.max(bound, preemptiveBound(partsOf(problem, m)));
  return Math.max(bound, twoMachineBound(problem));
}

/** Operations only this machine can do, not yet started, with the least work before and after each. */
function partsOf(problem: Problem, m: number): Part[] {
  const parts: Part[] = [];
  for (let j = 0; j < problem.jobs; j++) {
    const until = problem.firstOf[j + 1]!;
    let head = problem.release[j]! - problem.input.now;
    let tail = 0;
    for (let o = problem.firstOf[j]!; o < until; o++) tail += fastestSeconds(problem, o);
    for (let o = problem.firstOf[j]!; o < until; o++) {
      const seconds = fastestSeconds(problem, o);
      const started = !Number.isNaN(problem.startedAt[o]!);
      tail -= seconds;
      if (problem.eligible[o]!.length === 1 && problem.eligible[o]![0] === m && !started)
        parts.push({ head: Math.max(head, problem.availableFrom[m]! - problem.input.now), seconds, tail });
      if (!started) head += seconds;
    }
  }
  return parts;
}

/**
 * Least possible max(end + tail) when work may be interrupted: always run the ready part with the longest tail
 * (J. R. Jackson's preemptive rule). O(n²).
 */
function preemptiveBound(parts: readonly Part[]): number {
  const byHead = parts.toSorted((a, b) => a.head - b.head);
  const left = byHead.map((part) => part.seconds);
  let bound = 0;
  let at = 0;
  let arrived = 0;
  const ready = new Set<number>();
  while (arrived < byHead.length || ready.size > 0) {
    if (ready.size === 0) at = Math.max(at, byHead[arrived]!.head);
    while (arrived < byHead.length && byHead[arrived]!.head <= at) ready.add(arrived++);
    let next = -1;
    for (const k of ready) if (next < 0 || byHead[k]!.tail > byHead[next]!.tail) next = k;
    const until = Math.min(at + left[next]!, byHead[arrived]?.head ?? Infinity);
    left[next]! -= until - at;
    at = until;
    if (left[next]! > 0) continue;
    bound = Math.max(bound, at + byHead[next]!.tail);
    ready.delete(next);
  }
  return bound;
}

/** Johnson's makespan where every job goes through the same two machines; 0 elsewhere. */
function twoMachineBound(problem: Problem): number {
  const { firstOf, eligible, seconds, machines } = problem;
  const first = eligible[0]?.[0];
  const second = eligible[1]?.[0];
  if (first === undefined || second === undefined || first === second) return 0;
  for (let j = 0; j < problem.jobs; j++) {
    const o = firstOf[j]!;
    if (firstOf[j + 1] !== o + 2 || !Number.isNaN(problem.startedAt[o]!)) return 0;
    if (eligible[o]!.length !== 1 || eligible[o]![0] !== first) return 0;
    if (eligible[o + 1]!.length !== 1 || eligible[o + 1]![0] !== second) return 0;
  }
  let a = 0;
  let b = 0;
  for (const j of johnsonOrder(problem)) {
    a += seconds[firstOf[j]! * machines + first]!;
    b = Math.max(a, b) + seconds[(firstOf[j]! + 1) * machines + second]!;
  }
  return b;
}
