import { addDays, formatWallDate, startOfDay, twoFigures, wallParts } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import { endOf, type Scale } from './scale.ts';
import { DAY } from '../../core/units/duration.ts';

/** A mark on the time axis at the shop's wall clock. */
interface Tick {
  readonly at: number;
  /** '' for a mark without words. */
  readonly label: string;
}

export interface Axis {
  /** The days (or, from far away, the weeks), the first one perhaps started before the window. */
  readonly upper: readonly Tick[];
  /** Times of day, or days from far away. */
  readonly lower: readonly Tick[];
}

const MINUTES = [5, 10, 15, 30, 60, 120, 180, 360, 720] as const;
/** Pixels a label of each kind needs. */
const CLOCK_PX = 48;
const LONG_DATE_PX = 76;
const SHORT_DATE_PX = 48;
/** Every offset of a time zone in use is a multiple of this. */
const QUARTER_S = 900;

const clock = (minutes: number): string =>
  `${twoFigures(Math.floor(minutes / 60))}:${twoFigures(minutes % 60)}`;

/** Midnights of the shop from the day that holds the window's left edge to the one after its right edge. */
function midnights(scale: Scale, timeZone: string): number[] {
  const days = [startOfDay(instant(Math.floor(scale.from)), timeZone)];
  for (let last = days[0]!; last < endOf(scale); days.push(last)) last = addDays(last, 1, timeZone);
  return days;
}

/**
 * Marks every `step` minutes of the wall clock inside one day. On a day of 23 or 25 hours an hour that the clock skips
 * has no mark and an hour that it shows twice has two.
 */
function clockTicks(day: number, next: number, step: number, timeZone: string): Tick[] {
  if (next - day === DAY) {
    return Array.from({ length: 1440 / step }, (_, i) => ({
      at: day + i * step * 60,
      label: clock(i * step),
    }));
  }
  const ticks: Tick[] = [];
  const stride = Math.min(step * 60, QUARTER_S);
  for (let at = day; at < next; at += stride) {
    const { hour, minute } = wallParts(instant(at), timeZone);
    const minutes = hour * 60 + minute;
    if (minutes % step === 0) ticks.push({ at, label: clock(minutes) });
  }
  return ticks;
}

function dayLabel(at: number, pixels: number, timeZone: string): string {
  const words = formatWallDate(instant(at), timeZone);
  if (pixels >= LONG_DATE_PX) return words;
  const [weekday, day] = words.split(' ');
  return pixels >= SHORT_DATE_PX ? `${weekday} ${day}` : (day ?? '');
}

/** The marks for a window, in the shop's time zone, never closer than their words need. */
export function axisOf(scale: Scale, timeZone: string): Axis {
  const days = midnights(scale, timeZone);
  const dayPx = DAY / scale.perPixel;
  const step = MINUTES.find((minutes) => (minutes * 60) / scale.perPixel >= CLOCK_PX);
  const sees = ({ at }: Tick) => at >= scale.from && at < endOf(scale);
  if (step !== undefined) {
    const lower = days
      .slice(0, -1)
      .flatMap((day, i) => clockTicks(day, days[i + 1] ?? day + DAY, step, timeZone));
    const upper = days.slice(0, -1).map((at) => ({ at, label: dayLabel(at, dayPx, timeZone) }));
    return { upper, lower: lower.filter(sees) };
  }
  const isMonday = (at: number) => wallParts(instant(at), timeZone).weekday === 1;
  const first = days[0] ?? scale.from;
  return {
    upper: days
      .filter((at) => at === first || isMonday(at))
      .map((at) => ({ at, label: formatWallDate(instant(at), timeZone) })),
    lower: days.map((at) => ({ at, label: dayLabel(at, dayPx, timeZone) })).filter(sees),
  };
}
