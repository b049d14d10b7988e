import { ok, type Result } from '../result.ts';
import { machineIdOf, scheduleOf } from './decode.ts';
import { causesOf, type Cause, type CauseKind } from './explain/causes.ts';
import { rearrangements } from './explain/moves.ts';
import { leastOvertime, type Overtime } from './explain/overtime.ts';
import type { Problem, Queues, Schedule } from './problem.ts';
import { draftOf, endOf, positionOf, type Draft } from './what-if/draft.ts';
import { readQuestion } from './what-if/question.ts';
import { shiftsBetween, type JobShift } from './what-if/shifts.ts';

/** One change of the plan, and what it does. */
export interface Change {
  readonly kind: 'earlier-position' | 'other-machine' | 'swap' | 'overtime';
  /** Where each operation that moves would be; none for overtime. `position` counts the operations before it. */
  readonly moves: readonly {
    readonly operation: string;
    readonly machine: string;
    readonly position: number;
  }[];
  /** null for changes of the order. */
  readonly overtime: Overtime | null;
  readonly queues: Queues;
  /** With overtime, timed with the longer hours. */
  readonly schedule: Schedule;
  /** The job's end, and the seconds it would still be late. */
  readonly end: number;
  readonly late: number;
  /** Other jobs that would end later or earlier. */
  readonly later: readonly JobShift[];
  readonly earlier: readonly JobShift[];
  /** Change of the objective, below zero when the plan as a whole gains. Overtime itself costs nothing here. */
  readonly objectiveAdded: number;
}

/** Why a job ends when it does, and what would save it. */
export interface Explanation {
  readonly job: string;
  readonly end: number;
  readonly due: number | null;
  /** Seconds late; 0 when on time or without a due date. */
  readonly late: number;
  /** In order of time; they cover [from, end) exactly, `from` being now or the start of a step started before. */
  readonly causes: readonly Cause[];
  /** Seconds per kind, every kind that occurs; they add up to end − from. */
  readonly seconds: Readonly<Partial<Record<CauseKind, number>>>;
  /** The best change of each kind that ends a late job earlier: those that save it first, cheapest first. */
  readonly changes: readonly Change[];
  /** The first of these if it saves the job. */
  readonly cheapest: Change | null;
  /** When none saves it: the one after which it is least late; null when nothing helps, or nothing is needed. */
  readonly helpsMost: Change | null;
}

/**
 * Walks a job's steps from now to its end and says where the time goes; for a late job, the cheapest single change that
 * would make it on time. The cost of a change is what it adds to the objective, a second of overtime counting like a
 * second of changeover, since both cost a machine's crew. Changes of the order are tried by timing the full plan.
 * @returns the explanation; or why there is none: a job or operation that is not in the plan, queues that cannot be
 *   timed, a shop with one job order on all machines
 */
export function explain(problem: Problem, schedule: Schedule, jobId: string): Result<Explanation> {
  const question = readQuestion(problem, schedule.queues, [jobId]);
  if (!question.ok) return question;
  const draft = draftOf(problem, question.value.queues)!;
  const job = question.value.jobs[0]!;
  const causes = causesOf(problem, draft.queues, draft.timing, job);
  const end = endOf(problem, draft, job);
  const { due } = problem.input.jobs[job]!;
  const late = due === null ? 0 : Math.max(0, end - due);
  const before = question.value.schedule;
  const changes = late > 0 ? helpfulChanges(problem, draft, before, job, due!) : [];
  const saves = changes[0]?.late === 0;
  return ok({
    job: jobId,
    end,
    due,
    late,
    causes,
    seconds: secondsByKind(causes),
    changes,
    cheapest: saves ? changes[0]! : null,
    helpsMost: saves ? null : (changes[0] ?? null),
  });
}

function secondsByKind(causes: readonly Cause[]): Partial<Record<CauseKind, number>> {
  const sums: Partial<Record<CauseKind, number>> = {};
  for (const { kind, seconds } of causes) sums[kind] = (sums[kind] ?? 0) + seconds;
  return sums;
}

/** A change that was timed. */
interface Tried {
  readonly kind: Change['kind'];
  readonly moved: readonly number[];
  readonly overtime: Overtime | null;
  readonly problem: Problem;
  readonly draft: Draft;
  readonly late: number;
  readonly cost: number;
}

/** On time before late, then the cheaper; both late, the less late. */
const better = (a: Tried, b: Tried): number => a.late - b.late || a.cost - b.cost;

function helpfulChanges(
  problem: Problem,
  draft: Draft,
  before: Schedule,
  job: number,
  due: number,
): Change[] {
  const end = endOf(problem, draft, job);
  const best = new Map<Change['kind'], Tried>();
  const offer = (tried: Omit<Tried, 'late' | 'cost'>) => {
    const after = endOf(problem, tried.draft, job);
    if (after >= end) return;
    const extra = (tried.overtime?.seconds ?? 0) * problem.input.objective.changeover;
    const offered = { ...tried, late: Math.max(0, after - due), cost: tried.draft.objective + extra };
    const known = best.get(tried.kind);
    if (known === undefined || better(offered, known) < 0) best.set(tried.kind, offered);
  };
  for (const { kind, moved, queues } of rearrangements(problem, draft, job)) {
    const after = draftOf(problem, queues);
    if (after !== null) offer({ kind, moved, overtime: null, problem, draft: after });
  }
  const overtime = leastOvertime(problem, draft, job, due);
  if (overtime !== null) offer({ ...overtime, kind: 'overtime', moved: [] });
  return [...best.values()].sort(better).map((tried) => changeOf(tried, before, job));
}

function changeOf(
  { kind, moved, overtime, problem, draft, late }: Tried,
  before: Schedule,
  job: number,
): Change {
  const schedule = scheduleOf(problem, draft.queues, draft.timing);
  const { id } = problem.input.jobs[job]!;
  return {
    kind,
    moves: moved.map((o) => ({
      operation: problem.operationIds[o]!,
      machine: machineIdOf(problem, draft.timing.machine[o]!),
      position: positionOf(draft, o),
    })),
    overtime,
    queues: schedule.queues,
    schedule,
    end: endOf(problem, draft, job),
    late,
    ...shiftsBetween(problem, before.ends, schedule.ends, [id]),
    objectiveAdded: schedule.objective - before.objective,
  };
}
