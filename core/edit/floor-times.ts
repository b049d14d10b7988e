import { leftAt } from '../planning/started.ts';
import { operationIdOf, lineOfOperation, stageOfOperation } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';
import { instant, type Instant } from '../units/brand.ts';

/**
 * The earliest an operation can have started on a machine, as a form may say it before the command is refused: when the
 * machine's work before it ended or was set aside, and when the shear had its blanks (their first one, where lots are passed on).
 * @returns null when nothing that was recorded stands in the way
 */
export function earliestStart(shop: Shop, operation: string, machineId: string): Instant | null {
  const ends = shop.record.filter((r) => r.machineId === machineId).map(leftAt);
  const shear =
    stageOfOperation(operation) === 'brake'
      ? shop.record.find((r) => r.id === operationIdOf(lineOfOperation(operation), 'shear'))
      : undefined;
  const blanks = shear && (shop.settings.transferShare === 1 ? shear.end : shear.start);
  const bounds = [...ends, blanks ?? null].filter((at) => at !== null);
  return bounds.length === 0 ? null : instant(Math.max(...bounds));
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
