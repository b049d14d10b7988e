import { inLots, recordBefore, recordIn } from '../planning/routing.ts';
import { leftAt } from '../planning/started.ts';
import { ok, type Result } from '../result.ts';
import { comesAs, isElsewhere } from '../part/stage.ts';
import { lineOfOperation, stageOfOperation } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';
import { formatWall, formatWallDate } from '../time/wall.ts';
import { instant, type Instant } from '../units/brand.ts';
import { operationName } from './plan-commands.ts';
import { refuse } from './refuse.ts';

/** What was recorded before something else can have happened, and until when. */
interface Bound {
  readonly at: number;
  /** The operation that it is recorded of. */
  readonly of: string;
  /** What speaks against an earlier time, as a sentence. */
  readonly message: (at: number) => string;
}

/** "Mon 30 Nov 07:40" */
export const wall = ({ settings: { timeZone } }: Shop, at: number): string =>
  `${formatWallDate(instant(at), timeZone)} ${formatWall(instant(at), timeZone).slice(4)}`;

const later = (a: Bound | null, b: Bound | null): Bound | null =>
  a && b ? (a.at >= b.at ? a : b) : (a ?? b);

/** When the machine's work before was done or set aside; work elsewhere waits for none. */
function boundOfMachine(shop: Shop, machineId: string): Bound | null {
  if (shop.machine.some(({ id, stage }) => id === machineId && isElsewhere(stage))) return null;
  return shop.record.reduce<Bound | null>((last, record) => {
    const at = record.machineId === machineId ? leftAt(record) : null;
    if (at === null) return last;
    const message = (): string =>
      `${machineId} was at work on ${operationName(record.id)} until ${wall(shop, at)}.`;
    return later(last, { at, of: record.id, message });
  }, null);
}

/** The latest of what stands in the way of an earlier start. */
function boundOfStart(shop: Shop, operation: string, machineId: string): Bound | null {
  const free = boundOfMachine(shop, machineId);
  const there = thereFrom(shop, recordBefore(recordIn(shop), operation), operation);
  if (there === null) return free;
  const what = comesAs(stageOfOperation(operation));
  const message = (at: number): string =>
    `The ${what} of line ${lineOfOperation(operation)} were not there yet at ${wall(shop, at)}.`;
  return later(free, { at: there, of: operation, message });
}

/** When a step had the first pieces for the next: at its end, or at its start where they are passed on lot by lot. */
export function thereFrom(shop: Shop, before: OperationRecord | undefined, operation: string): number | null {
  if (!before) return null;
  const lots =
    inLots(stageOfOperation(before.id), stageOfOperation(operation)) && shop.settings.transferShare < 1;
  return lots ? before.start : before.end;
}

/**
 * The earliest an operation can have started on a machine, as a form may say it before the command is refused: when the
 * machine's work before it ended or was set aside, and when the step before had its pieces (their first one, where lots are passed on).
 * @returns null when nothing that was recorded stands in the way
 */
export function earliestStart(shop: Shop, operation: string, machineId: string): Instant | null {
  const bound = boundOfStart(shop, operation, machineId);
  return bound && instant(bound.at);
}

/** The earliest work under way can have ended: when it began, was paused last, or went on last. */
export function earliestEnd({ start, pauses }: Pick<OperationRecord, 'start' | 'pauses'>): Instant {
  const last = pauses.at(-1);
  return instant(last ? (last.to ?? last.from) : start);
}

/**
 * What a time means that was given by the minute: presses are kept to the second, so the very minute in which the work
 * before ended is the moment it ended, not some seconds earlier.
 */
export const withinMinute = (at: Instant, earliest: Instant | null): Instant =>
  earliest !== null && at < earliest && at + 60 > earliest ? earliest : at;

/** When something happened, as it is kept. */
interface Moment {
  readonly at: number;
  /** What to add to the label where the clock said otherwise; else ''. */
  readonly note: string;
}

/** When work began: a press, or a time that was typed in. */
export const momentOfStart = (
  shop: Shop,
  operation: string,
  machineId: string,
  at: number,
  given: boolean,
): Result<Moment> => momentAfter(shop, boundOfStart(shop, operation, machineId), at, given);

/** When a changeover began; the blanks need not be there for it. */
export const momentOfChangeover = (shop: Shop, machineId: string, at: number): Result<Moment> =>
  momentAfter(shop, boundOfMachine(shop, machineId), at, false);

/** When something happened to work that is under way: not before what was recorded of it last. */
export function momentOn(shop: Shop, record: OperationRecord, at: number, given: boolean): Result<Moment> {
  const last = record.pauses.at(-1);
  const what = last ? (last.to === null ? 'was paused' : 'was resumed') : 'was started';
  const since = earliestEnd(record);
  const message = (early: number): string =>
    `${operationName(record.id)} ${what} at ${wall(shop, since)}; ${wall(shop, early)} is before that.`;
  return momentAfter(shop, { at: since, of: record.id, message }, at, given);
}

/**
 * A clock that was set back must not stop the work: a press from before what was recorded last is kept as of then. A time
 * that somebody typed in is refused, since they can type another.
 */
function momentAfter(shop: Shop, bound: Bound | null, at: number, given: boolean): Result<Moment> {
  if (bound === null || at >= bound.at) return ok({ at, note: '' });
  if (given) return refuse(bound.of, 'time', bound.message(at), 'Give a later time.');
  const note = `; the clock said ${wall(shop, at)}, before what was recorded last, so ${wall(shop, bound.at)} was kept`;
  return ok({ at: bound.at, note });
}
