import type { Schedule, ScheduledOperation } from '../schedule/problem.ts';
import type { Shop } from '../shop/state.ts';
import { latenessOf, overdueAt } from './lateness.ts';

/** A plan in the numbers an owner asks for. Durations in seconds. */
export interface PlanFigures {
  /** Planned lines. */
  readonly lines: number;
  /** Open lines that cannot be planned. */
  readonly leftOut: number;
  readonly lateLines: number;
  /** Share of open lines that end by their due date, those that cannot be planned not among them: 0 to 1; 1 for no line. */
  readonly onTimeShare: number;
  /** Σ tardiness over lines, unweighted and weighted by the order's importance. */
  readonly tardiness: number;
  readonly weightedTardiness: number;
  /** The part of `tardiness` that lines were overdue already when the plan begins. */
  readonly overdue: number;
  readonly changeovers: number;
  readonly changeoverSeconds: number;
  /** Changeover ÷ (changeover + work), 0 to 1: ISO 22400-2 calls it the setup ratio (name from memory). */
  readonly changeoverShare: number;
  readonly workSeconds: number;
  /** Epoch seconds at which the last operation ends; null for an empty plan. */
  readonly lastEnd: number | null;
}

/** "75 %", rounded down: 100 % says that every line is on time. */
export const onTimePercent = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

/** What two plans are compared by at a glance. Durations in seconds. */
export interface PlanGist {
  readonly lateLines: number;
  /** Σ tardiness over lines, unweighted. */
  readonly lateSeconds: number;
  readonly changeoverSeconds: number;
}

/** By the due dates that customers were given, whatever dates the plan was searched with. */
export function gistOf(shop: Shop, schedule: Schedule): PlanGist {
  const late = latenessOf(shop, schedule).filter((row) => row.lateness > 0);
  return {
    lateLines: late.length,
    lateSeconds: late.reduce((sum, row) => sum + row.lateness, 0),
    changeoverSeconds: schedule.terms.changeover,
  };
}

/**
 * @param leftOut open lines that cannot be planned
 * @param now the moment the plan begins at; epoch seconds
 * @param workSeconds net work of an operation on its machine, closed hours left out
 */
export function figuresOf(
  shop: Shop,
  schedule: Schedule,
  leftOut: number,
  now: number,
  workSeconds: (o: ScheduledOperation) => number,
): PlanFigures {
  const lateness = latenessOf(shop, schedule);
  const late = lateness.filter((row) => row.lateness > 0);
  const open = lateness.length + leftOut;
  const changed = schedule.operations.filter((o) => o.changeoverSeconds > 0);
  const changeoverSeconds = changed.reduce((sum, o) => sum + o.changeoverSeconds, 0);
  const work = schedule.operations.reduce((sum, o) => sum + workSeconds(o), 0);
  return {
    lines: lateness.length,
    leftOut,
    lateLines: late.length,
    onTimeShare: open === 0 ? 1 : (lateness.length - late.length) / open,
    tardiness: late.reduce((sum, row) => sum + row.lateness, 0),
    weightedTardiness: late.reduce((sum, row) => sum + row.lateness * row.importance, 0),
    overdue: late.reduce((sum, row) => sum + overdueAt(row, now), 0),
    changeovers: changed.length,
    changeoverSeconds,
    changeoverShare: changeoverSeconds + work === 0 ? 0 : changeoverSeconds / (changeoverSeconds + work),
    workSeconds: work,
    lastEnd:
      schedule.operations.length === 0
        ? null
        : schedule.operations.reduce((last, o) => Math.max(last, o.end), 0),
  };
}
