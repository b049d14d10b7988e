import type { SetupStep } from '../../../core/report/dispatch.ts';
import { formatClock, formatDayAndClock, formatWall, wallParts } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { formatDuration } from '../../../core/units/duration.ts';

/** Columns of a dispatch list. */
export const COLUMNS = 9;

/** An instant on paper: the weekday is enough within a week, beyond it the date stands too. */
export const when = (at: Instant, timeZone: string, withDate: boolean): string =>
  withDate ? formatDayAndClock(at, timeZone) : formatWall(at, timeZone);

/** "to 14:30" on the same day, else "to Wed 08:10". */
export function until(start: Instant, end: Instant, timeZone: string, withDate: boolean): string {
  const sameDay = wallParts(start, timeZone).date === wallParts(end, timeZone).date;
  return `to ${sameDay ? formatClock(end, timeZone) : when(end, timeZone, withDate)}`;
}

/** "Change over, 10 min: colour Moss → Barn red, gauge 24 ga → 26 ga" */
export function changeoverWords(seconds: number, steps: readonly SetupStep[], firstPiece = false): string {
  const changes = steps.map(({ attribute, from, to }) =>
    from === null ? `${attribute} ${to}` : `${attribute} ${from} → ${to}`,
  );
  const first = firstPiece ? ', first piece included' : '';
  return [`Change over, ${formatDuration(seconds)}${first}`, changes.join(', ')].filter(Boolean).join(': ');
}
