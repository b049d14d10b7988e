import { machineIdOf } from '../decode.ts';
import { holdsOn } from '../held.ts';
import type { Problem } from '../problem.ts';
import type { NumberedQueues } from '../numbered-queues.ts';
import { readyAt, type Timing } from '../timing.ts';
import { finish, intervalAt, nextOpen, rewind } from '../working-time.ts';

/**
 * Why a stretch of time went by before a job was done:
 * - `release`: it may not start before its release;
 * - `work`, `changeover`: a machine works on it, or is set up for it;
 * - `closed`: its machine is closed;
 * - `waiting-for-machine`: its machine does operations ahead of it in the queue, or is not available yet;
 * - `pinned-or-frozen`: the same, but what is ahead, or the operation itself, was started, frozen or pinned;
 * - `queue-choice`: its machine waits idle for an operation ahead in the queue that the step before has not let start;
 * - `idle-for-release`: the same, but that operation may not start before its release;
 * - `waiting-for-step-before`: it has started on a first lot and the step before has not done the rest;
 * - `held-elsewhere`: what it, or an operation ahead in the queue, needs is held on another machine;
 * - `crew`: too few people are free. Where both are missing in one wait, what is held elsewhere is told first.
 */
export type CauseKind =
  | 'release'
  | 'work'
  | 'changeover'
  | 'closed'
  | 'waiting-for-machine'
  | 'pinned-or-frozen'
  | 'queue-choice'
  | 'idle-for-release'
  | 'waiting-for-step-before'
  | 'held-elsewhere'
  | 'crew';

/** One stretch [from, to) of a job's time, on the problem's axis; `seconds` = to − from. */
export interface Cause {
  readonly kind: CauseKind;
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
  /** The step that waits or is worked on, and its machine; null for a release. */
  readonly operation: string | null;
  readonly machine: string | null;
  /** Operations that it waits for: ahead in the queue, in queue order, or those that hold what it needs, in order of time. */
  readonly blockedBy: readonly string[];
  /** What is held elsewhere, each thing and machine once; none for other kinds. */
  readonly held: readonly HeldElsewhere[];
}

/** A thing that is wanted, the machine that holds it, and until when. */
export interface HeldElsewhere {
  readonly thing: string;
  readonly machine: string;
  readonly until: number;
}

interface Stretch {
  readonly kind: CauseKind;
  readonly to: number;
  readonly blockedBy: readonly number[];
  readonly held?: readonly HeldElsewhere[];
}

/**
 * The causes of a job's end, in order of time. They cover [from, end) without gap or overlap, where `from` is `now`, or
 * the start of a step started before. Each step accounts for the time from when the job lets it start (its release, or the
 * transfer from the step before) until the next step may start.
 * @param timing of these queues, complete
 */
export function causesOf(
  problem: Problem,
  queues: NumberedQueues,
  timing: Timing,
  job: number,
): readonly Cause[] {
  const first = problem.firstOf[job]!;
  const last = problem.firstOf[job + 1]! - 1;
  const { now } = problem.input;
  const started = problem.startedAt[first]!;
  const causes: Cause[] = [];
  let from = Number.isNaN(started) ? problem.release[job]! : started;
  if (from > now) causes.push(releaseFrom(now, from));
  for (let o = first; o <= last; o++) {
    const next = o === last ? timing.end[o]! : handedOn(problem, timing, o + 1);
    const to = Math.max(from, next);
    const own = causesOfStep(problem, queues, timing, o, from, to);
    const until = own.at(-1)?.to ?? from;
    causes.push(...own);
    // Only a step started before its release leaves the next one to wait for it.
    if (until < to) causes.push(releaseFrom(until, to));
    from = to;
  }
  return causes;
}

const releaseFrom = (from: number, to: number): Cause => ({
  kind: 'release',
  from,
  to,
  seconds: to - from,
  operation: null,
  machine: null,
  blockedBy: [],
  held: [],
});

/** When the step before has let this one start. One started early started when it did. */
const handedOn = (problem: Problem, timing: Timing, o: number): number =>
  Math.min(readyAt(problem, timing, o), timing.start[o]!);

function causesOfStep(
  problem: Problem,
  queues: NumberedQueues,
  timing: Timing,
  o: number,
  from: number,
  to: number,
): Cause[] {
  const m = timing.machine[o]!;
  const stretches = [...waitOf(problem, queues, timing, o), ...workOf(problem, timing, o)];
  const causes: Cause[] = [];
  let at = from;
  for (const { kind, to: until, blockedBy, held = [] } of stretches) {
    const end = Math.min(until, to);
    while (at < end) {
      const opens = problem.open[m]!.start[intervalAt(problem.open[m]!, at)]!;
      const closed = opens > at;
      const change = Math.min(end, closed ? opens : problem.open[m]!.end[intervalAt(problem.open[m]!, at)]!);
      append(causes, {
        kind: closed ? 'closed' : kind,
        from: at,
        to: change,
        seconds: change - at,
        operation: problem.operationIds[o]!,
        machine: machineIdOf(problem, m),
        blockedBy: closed ? [] : blockedBy.map((each) => problem.operationIds[each]!),
        held: closed ? [] : held,
      });
      at = change;
    }
  }
  return causes;
}

/** Adds a cause, joined to the last one where it goes on with the same. */
function append(causes: Cause[], next: Cause): void {
  const last = causes.at(-1);
  if (last?.kind !== next.kind) return void causes.push(next);
  causes[causes.length - 1] = {
    ...last,
    to: next.to,
    seconds: next.to - last.from,
    blockedBy: [...last.blockedBy, ...next.blockedBy.filter((id) => !last.blockedBy.includes(id))],
    held: latestOf([...last.held, ...next.held]),
  };
}

/** Of the same thing on the same machine the last. */
const latestOf = (held: readonly HeldElsewhere[]): HeldElsewhere[] => [
  ...new Map(held.map((each) => [`${each.thing}\n${each.machine}`, each])).values(),
];

const isStarted = (problem: Problem, o: number): boolean => !Number.isNaN(problem.startedAt[o]!);

/** What its machine does up to the operation's start, in order of time; before the first stretch it is free. */
function waitOf(problem: Problem, queues: NumberedQueues, timing: Timing, o: number): Stretch[] {
  if (isStarted(problem, o)) return [];
  const m = timing.machine[o]!;
  const open = problem.open[m]!;
  const queue = Array.from(queues[m]!);
  const busy = (ahead: number): CauseKind =>
    problem.fixed[o] || problem.fixed[ahead] ? 'pinned-or-frozen' : 'waiting-for-machine';
  const stretches: Stretch[] = [
    { kind: 'waiting-for-machine', to: problem.availableFrom[m]!, blockedBy: [] },
  ];
  for (const ahead of queue.slice(0, queue.indexOf(o))) {
    const setup = timing.changeover[ahead]!;
    const ready = nextOpen(open, readyAt(problem, timing, ahead));
    const idle = busy(ahead) === 'waiting-for-machine' ? idleFor(problem, timing, ahead) : 'pinned-or-frozen';
    if (!isStarted(problem, ahead))
      stretches.push(
        { kind: idle, to: rewind(open, ready, setup), blockedBy: [ahead] },
        ...shortageOf(problem, timing, ahead),
      );
    stretches.push({ kind: busy(ahead), to: timing.end[ahead]!, blockedBy: [ahead] });
  }
  return [
    ...stretches,
    ...shortageOf(problem, timing, o),
    { kind: 'changeover', to: timing.start[o]!, blockedBy: [] },
  ];
}

/** What keeps an operation whose machine is free for it and that is ready: things held elsewhere, then people. */
function shortageOf(problem: Problem, timing: Timing, o: number): Stretch[] {
  const setupStart = rewind(problem.open[timing.machine[o]!]!, timing.start[o]!, timing.changeover[o]!);
  return [...holdersBefore(problem, timing, o, setupStart), { kind: 'crew', to: setupStart, blockedBy: [] }];
}

/** Waits for operations on other machines that hold something of what this one holds, those that end by `until`. */
function holdersBefore(problem: Problem, timing: Timing, o: number, until: number): Stretch[] {
  if (problem.held === null) return [];
  const things = thingsOf(problem, timing, o);
  return Array.from(timing.end.keys())
    .filter((each) => timing.machine[each] !== timing.machine[o] && timing.end[each]! <= until)
    .map((holder): Stretch => ({
      kind: 'held-elsewhere',
      to: timing.end[holder]!,
      blockedBy: [holder],
      held: thingsOf(problem, timing, holder)
        .filter((thing) => things.includes(thing))
        .map((thing) => ({
          thing,
          machine: machineIdOf(problem, timing.machine[holder]!),
          until: timing.end[holder]!,
        })),
    }))
    .filter((stretch) => stretch.held!.length > 0)
    .sort((a, b) => a.to - b.to || a.blockedBy[0]! - b.blockedBy[0]!);
}

function thingsOf(problem: Problem, timing: Timing, o: number): readonly string[] {
  const job = problem.jobOf[o]!;
  const operation = problem.input.jobs[job]!.operations[o - problem.firstOf[job]!]!;
  return holdsOn(operation, machineIdOf(problem, timing.machine[o]!));
}

/** What keeps an operation ahead, whose machine is free for it, from starting: whichever lets it start last. */
const idleFor = (problem: Problem, timing: Timing, ahead: number): CauseKind =>
  readyAt(problem, timing, ahead) === problem.release[problem.jobOf[ahead]!]
    ? 'idle-for-release'
    : 'queue-choice';

/** The work itself; a step that began on a first lot may run dry before the last one comes. */
function workOf(problem: Problem, timing: Timing, o: number): Stretch[] {
  const m = timing.machine[o]!;
  const open = problem.open[m]!;
  const work: Stretch = { kind: 'work', to: timing.end[o]!, blockedBy: [] };
  const share = problem.firstOf[problem.jobOf[o]!] === o ? 1 : problem.transferShare[o - 1]!;
  const seconds = problem.seconds[o * problem.machines + m]!;
  const start = timing.start[o]!;
  if (share === 1 || finish(open, start, seconds) >= timing.end[o]!) return [work];
  const lot = Math.ceil(share * seconds);
  const dry = finish(open, start, seconds - lot);
  return [
    { kind: 'work', to: dry, blockedBy: [] },
    { kind: 'waiting-for-step-before', to: timing.end[o - 1]!, blockedBy: [o - 1] },
    work,
  ];
}
