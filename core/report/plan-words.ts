import type { QueueChange } from '../planning/changed-queues.ts';
import type { LineMove, PlanComparison } from '../planning/compare-plans.ts';
import type { PlanSum } from '../shop/kept-plan.ts';
import { lineOfOperation } from '../shop/order.ts';
import { compareIds } from '../shop/row-change.ts';
import { formatDayAndClock } from '../time/wall.ts';
import { counted } from '../units/count.ts';
import { formatDuration, shortDuration } from '../units/duration.ts';

/** A plan that was kept or published, as far as its name goes. */
interface NamedPlan {
  readonly what: 'published' | 'named';
  /** May be empty for one that was published. */
  readonly name: string;
  readonly at: number;
}

/** "Kept as “Before the rush”" or "Published: for the night" */
export const planName = ({ what, name }: NamedPlan): string =>
  what === 'named' ? `Kept as “${name}”` : name === '' ? 'Published' : `Published: ${name}`;

/** "“Before the rush”, kept Mon 30 Nov 07:10" or "Plan published Mon 30 Nov 07:10: for the night" */
export function planTitle({ what, name, at }: NamedPlan, timeZone: string): string {
  const when = formatDayAndClock(at, timeZone);
  if (what === 'named') return `“${name}”, kept ${when}`;
  return `Plan published ${when}${name === '' ? '' : `: ${name}`}`;
}

/** One thing that changed in a machine's queue, for the person at it. */
export interface ChangedRow {
  readonly operation: string;
  readonly lineId: string;
  /** "earlier, now No. 2" */
  readonly words: string;
}

/** @param queue the machine's as it is now; its first is No. 1, as on the lists */
export const changedRows = (changes: readonly QueueChange[], queue: readonly string[]): ChangedRow[] =>
  changes.map((change) => {
    const position = queue.indexOf(change.operation);
    const now = position < 0 ? '' : `, now No. ${position + 1}`;
    return {
      operation: change.operation,
      lineId: lineOfOperation(change.operation),
      words: `${changeWords(change)}${now}`,
    };
  });

function changeWords({ what, machineId }: QueueChange): string {
  switch (what) {
    case 'added':
      return 'new';
    case 'removed':
      return 'no longer in the plan';
    case 'came':
      return `from ${machineId}`;
    case 'went':
      return `to ${machineId}`;
    case 'earlier':
    case 'later':
      return what;
  }
}

/** "2 lines late, 9 changeovers (1 h 20 min)" */
export const sumWords = ({ lateLines, changeovers, changeoverSeconds }: PlanSum): string =>
  `${counted(lateLines, 'line')} late, ${counted(changeovers, 'changeover')} (${formatDuration(changeoverSeconds)})`;

/** One figure of two plans. */
export interface SumRow {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

export function sumRows({ before, after }: PlanComparison): SumRow[] {
  const row = (label: string, words: (sum: PlanSum) => string): SumRow => ({
    label,
    before: words(before),
    after: words(after),
  });
  return [
    row('Late lines', ({ lateLines }) => String(lateLines)),
    row('Hours late', ({ lateSeconds }) => formatDuration(lateSeconds)),
    row('Changeovers', ({ changeovers }) => String(changeovers)),
    row('Time changing over', ({ changeoverSeconds }) => formatDuration(changeoverSeconds)),
  ];
}

/** A line whose end differs between two plans. */
export interface MovedLine extends LineMove {
  /** "2 h earlier", "1 d later" */
  readonly words: string;
  readonly turn: 'newly late' | 'no longer late' | null;
}

/** Every line that ends at another time, or on the other side of its due date: newly late ones first, then by line. */
export function movedLines(comparison: PlanComparison): MovedLine[] {
  const { earlier, later, newlyLate, noLongerLate } = comparison;
  const moves = new Map(
    [...newlyLate, ...noLongerLate, ...earlier, ...later].map((move) => [move.lineId, move]),
  );
  const turnOf = (lineId: string): MovedLine['turn'] =>
    newlyLate.some((move) => move.lineId === lineId)
      ? 'newly late'
      : noLongerLate.some((move) => move.lineId === lineId)
        ? 'no longer late'
        : null;
  const order = (turn: MovedLine['turn']) => ['newly late', 'no longer late', null].indexOf(turn);
  return [...moves.values()]
    .map((move): MovedLine => ({ ...move, words: moveWords(move), turn: turnOf(move.lineId) }))
    .sort((a, b) => order(a.turn) - order(b.turn) || compareIds(a.lineId, b.lineId));
}

function moveWords({ before, after }: LineMove): string {
  const seconds = after - before;
  return `${shortDuration(Math.abs(seconds))} ${seconds < 0 ? 'earlier' : 'later'}`;
}
