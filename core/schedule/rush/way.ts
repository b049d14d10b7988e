import { scheduleOf } from '../decode.ts';
import type { Problem, Queues, Schedule } from '../problem.ts';
import type { Draft } from '../what-if/draft.ts';
import { shiftsBetween, type JobShift } from '../what-if/shifts.ts';

/** A way to take a rush in, and what it costs against the plan without it. */
export interface RushWay {
  /** `front`: as soon as possible; `run`: into its run; `replan`: everything searched again outside what is fixed. */
  readonly way: 'front' | 'run' | 'replan';
  readonly queues: Queues;
  readonly schedule: Schedule;
  /** When the last of the rush is done. */
  readonly ready: number;
  /** The most seconds that one of its jobs ends after its own due date; 0 when all are on time. */
  readonly late: number;
  /** Those of the rush itself and those it causes by standing between others. */
  readonly changeoverSecondsAdded: number;
  readonly changeoversAdded: number;
  /** Other jobs that end later or earlier than without the rush. */
  readonly later: readonly JobShift[];
  readonly earlier: readonly JobShift[];
  /** Change of the objective, what the rush itself adds included. */
  readonly objectiveAdded: number;
}

/** What a rush is weighed against. */
export interface RushCase {
  readonly problem: Problem;
  /** The rush, by job number. */
  readonly jobs: readonly number[];
  /** The plan without the rush. */
  readonly before: Schedule;
}

/** The figures of a way. */
export function wayOf({ problem, jobs, before }: RushCase, way: RushWay['way'], schedule: Schedule): RushWay {
  const rush = jobs.map((j) => problem.input.jobs[j]!);
  const changeovers = ({ operations }: Schedule) =>
    operations.filter((operation) => operation.changeoverSeconds > 0).length;
  return {
    way,
    queues: schedule.queues,
    schedule,
    ready: Math.max(...rush.map(({ id }) => schedule.ends[id]!)),
    late: Math.max(...rush.map(({ id, due }) => (due === null ? 0 : Math.max(0, schedule.ends[id]! - due)))),
    changeoverSecondsAdded: schedule.terms.changeover - before.terms.changeover,
    changeoversAdded: changeovers(schedule) - changeovers(before),
    ...shiftsBetween(
      problem,
      before.ends,
      schedule.ends,
      rush.map(({ id }) => id),
    ),
    objectiveAdded: schedule.objective - before.objective,
  };
}

/** The same for complete queues. */
export const wayOfDraft = (rush: RushCase, way: RushWay['way'], { queues, timing }: Draft): RushWay =>
  wayOf(rush, way, scheduleOf(rush.problem, queues, timing));
