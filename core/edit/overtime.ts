import type { Calendar } from '../time/calendar.ts';
import type { Shop } from '../shop/state.ts';
import { formatClock, shiftDate, wallParts } from '../time/wall.ts';
import { instant } from '../units/brand.ts';
import type { Command } from './command.ts';

/** Extra open time of one machine, from an instant on. */
interface ExtraHours {
  readonly machine: string;
  readonly from: number;
  readonly seconds: number;
}

const MINUTE = 60;

/**
 * The command that keeps a machine open for longer: its calendar gets the overtime, to the full minute, and so do all
 * machines that share the calendar.
 * @param name how the calendar lists it
 * @returns null when the machine or its calendar is gone
 */
export function overtimeCommand(shop: Shop, extra: ExtraHours, name: string): Command | null {
  const calendar = calendarOf(shop, extra.machine);
  if (!calendar) return null;
  const overtime = spansOf(extra, shop.settings.timeZone).map((span) => ({ name, ...span }));
  const row = { ...calendar, overtime: [...calendar.overtime, ...overtime] };
  return { do: 'row.save', kind: 'calendar', row };
}

/** Ids of the machines that overtime on one of them opens: all that share its calendar. */
export const openedWith = (shop: Shop, machineId: string): string[] => {
  const calendar = calendarOf(shop, machineId);
  return shop.machine.filter((m) => m.calendarId === calendar?.id).map((m) => m.id);
};

const calendarOf = (shop: Shop, machineId: string): Calendar | undefined => {
  const machine = shop.machine.find((m) => m.id === machineId);
  return shop.calendar.find((c) => c.id === machine?.calendarId);
};

type Span = Omit<Calendar['overtime'][number], 'name'>;

/** On the wall clock, split at midnight. */
function spansOf({ from, seconds }: ExtraHours, timeZone: string): Span[] {
  const until = Math.ceil((from + seconds) / MINUTE) * MINUTE;
  const first = wallParts(instant(from), timeZone).date;
  const last = wallParts(instant(until), timeZone).date;
  const end = formatClock(instant(until), timeZone);
  const spans: Span[] = [];
  for (let date = first; date <= last; date = shiftDate(date, 1))
    spans.push({
      date,
      start: date === first ? formatClock(instant(from), timeZone) : '00:00',
      end: date === last ? end : '24:00',
    });
  return spans.filter((span) => span.start < span.end);
}
