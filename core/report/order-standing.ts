import { piecesOf } from '../edit/floor-counts.ts';
import { STAGES, stepDone, stepWord } from '../part/stage.ts';
import { isSuspended } from '../planning/started.ts';
import type { Schedule } from '../schedule/problem.ts';
import { termsOf } from '../shop/line-terms.ts';
import { lineOfOperation, operationIdOf, type OrderLine, type WorkOrder } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';
import { formatDayAndClock } from '../time/wall.ts';
import { counted } from '../units/count.ts';
import { shortDuration } from '../units/duration.ts';

/**
 * How far an open line is, by what the floor has reported: "waiting", "shearing 12/40", both steps where both are under way,
 * "sheared" between two. Figures are good pieces of those that the step makes, blanks beyond the line's pieces included.
 * @returns a function, so that the reports of a whole shop are looked up once
 */
export function progressIn(shop: Shop): (line: Pick<OrderLine, 'id'>) => string {
  const records = new Map(shop.record.map((record) => [record.id, record]));
  return ({ id }) => {
    const steps = STAGES.flatMap((stage) => {
      const record = records.get(operationIdOf(id, stage));
      return record ? [{ stage, record }] : [];
    });
    const running = steps.filter(({ record }) => record.end === null);
    if (running.length > 0)
      return running.map(({ stage, record }) => stepWord[stage] + pieces(shop, record)).join(', ');
    const last = steps.at(-1);
    return last ? stepDone[last.stage] : 'waiting';
  };
}

function pieces(shop: Shop, record: OperationRecord): string {
  const stands = record.pauses.at(-1)?.to === null;
  const how = isSuspended(record) ? ', suspended' : stands ? ', paused' : '';
  return ` ${record.good}/${piecesOf(shop, record)}${how}`;
}

/** Whether a stored queue names a line; one that none names is planned behind all that is. */
export function queuedIn({ queue }: Pick<Shop, 'queue'>): (lineId: string) => boolean {
  const queued = new Set(queue.flatMap(({ operations }) => operations.map(lineOfOperation)));
  return (lineId) => queued.has(lineId);
}

interface OrderStanding {
  /** "3 lines: 1 done, 1 shearing 12/40, 1 waiting" */
  readonly progress: string;
  /** When all of it is planned to be done against what was promised, or why nobody can say; a sentence. */
  readonly date: string;
  /** Some of it ends after its promise. */
  readonly late: boolean;
}

/** How a whole work order stands. @param schedule the plan's times; null while there is none */
export function orderStanding(
  shop: Shop,
  order: WorkOrder,
  schedule: Pick<Schedule, 'ends'> | null,
): OrderStanding {
  const lines = shop.line.filter(({ orderId }) => orderId === order.id);
  const open = lines.filter(({ status }) => status === 'open');
  const progress = progressIn(shop);
  const counts = new Map<string, number>();
  for (const line of lines) {
    const words = line.status === 'open' ? progress(line) : line.status;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  const each = [...counts].map(([words, count]) => (lines.length === 1 ? words : `${count} ${words}`));
  return {
    progress: `${counted(lines.length, 'line')}: ${each.join(', ')}`,
    ...dateOf(shop, order, open, schedule),
  };
}

const said = (date: string, late = false) => ({ date, late });

/** The end of the last open line, and whether every line keeps its own promise. */
function dateOf(
  shop: Shop,
  order: WorkOrder,
  open: readonly OrderLine[],
  schedule: Pick<Schedule, 'ends'> | null,
) {
  const { timeZone } = shop.settings;
  if (order.status === 'held') return said('It is held, so nothing of it is planned.');
  if (order.status !== 'open' || open.length === 0) return said('Nothing of it is left to do.');
  if (!schedule) return said('There is no plan to read a date from.');
  const timed = open.map((line) => ({
    id: line.id,
    end: schedule.ends[line.id],
    due: termsOf(order, line).due,
  }));
  const without = timed.filter(({ end }) => end === undefined).map(({ id }) => id);
  if (without.length > 0) return said(`No date for all of it: ${without.join(', ')} cannot be planned.`);
  const ends = timed.map(({ id, end = 0, due }) => ({ id, end, due, late: end - due }));
  const end = Math.max(...ends.map((line) => line.end));
  const due = Math.max(...ends.map((line) => line.due));
  const worst = ends.reduce((most, line) => (line.late > most.late ? line : most));
  const whole = `All of it is planned to be done ${formatDayAndClock(end, timeZone)}, ${against(end - due)} its due date ${formatDayAndClock(due, timeZone)}`;
  // Where lines have dates of their own, all of it may be in time for the last of them and one too late for its own.
  const own =
    worst.late > 0 && end <= due ? `; ${worst.id} ends ${shortDuration(worst.late)} after its own` : '';
  const behind = open.every(({ id }) => queuedIn(shop)(id)) ? '' : '; not all of it is queued yet';
  return said(`${whole}${own}${behind}.`, worst.late > 0);
}

const against = (late: number): string =>
  late === 0 ? 'exactly on' : `${shortDuration(Math.abs(late))} ${late > 0 ? 'after' : 'before'}`;
