import { addDays, formatWallDate, startOfDay, twoFigures, wallParts } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import { DAY } from '../../core/units/duration.ts';
import { flat, type Fold } from './fold.ts';
import { endOf, type Scale } from './scale.ts';

/** A mark on the time axis at the shop's wall clock. */
interface Tick {
  /** In board seconds. */
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
/** What the words alone take. */
const CLOCK_WORDS_PX = 40;
const LONG_DATE_PX = 88;
const SHORT_DATE_PX = 48;
/** Every offset of a time zone in use is a multiple of this. */
const QUARTER_S = 900;

const clock = (minutes: number): string =>
  `${twoFigures(Math.floor(minutes / 60))}:${twoFigures(minutes % 60)}`;

/** Midnights of the shop from the day that holds the window's left edge to the one after its right edge. */
function midnights(scale: Scale, timeZone: string, fold: Fold): number[] {
  const days = [startOfDay(instant(Math.floor(fold.back(scale.from))), timeZone)];
  const end = fold.back(endOf(scale));
  for (let last = days[0]!; last < end; days.push(last)) last = addDays(last, 1, timeZone);
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

/** Of marks at one place, as the days of a folded weekend are, the last. */
const lastAtEach = <T extends Pick<Tick, 'at'>>(marks: readonly T[]): T[] =>
  marks.filter(({ at }, i) => marks[i + 1] === undefined || marks[i + 1]!.at > at);

/** The days with the pixels that each takes of the board; those folded away whole are left out. */
function daysOf(midnight: readonly number[], { perPixel }: Scale, fold: Fold) {
  const days = lastAtEach(midnight.map((day) => ({ day, at: fold.at(day) })));
  return days.map(({ day, at }, i) => ({ day, at, px: ((days[i + 1]?.at ?? at + DAY) - at) / perPixel }));
}

/** Times of day that are not folded away, none so close before a break or another that its words run over it. */
function clocks(
  midnight: readonly number[],
  step: number,
  scale: Scale,
  timeZone: string,
  fold: Fold,
): Tick[] {
  const ticks = midnight
    .slice(0, -1)
    .flatMap((day, i) => clockTicks(day, midnight[i + 1] ?? day + DAY, step, timeZone))
    .filter(({ at }) => fold.back(fold.at(at)) === at)
    .map((tick) => ({ ...tick, at: fold.at(tick.at) }));
  return fold === flat
    ? ticks
    : ticks.filter(({ at }, i) => {
        const next = ticks[i + 1];
        const end = fold.breaks.find((one) => one.at >= at)?.at ?? Infinity;
        const px = (to: number) => (to - at) / scale.perPixel;
        return px(next?.at ?? Infinity) >= CLOCK_PX && px(end) >= CLOCK_WORDS_PX;
      });
}

/**
 * The marks for a window, in the shop's time zone, never closer than their words need.
 * @param scale in board seconds, as `fold` makes them of instants
 */
export function axisOf(scale: Scale, timeZone: string, fold: Fold = flat): Axis {
  const midnight = midnights(scale, timeZone, fold);
  const step = MINUTES.find((minutes) => (minutes * 60) / scale.perPixel >= CLOCK_PX);
  const sees = ({ at }: Tick) => at >= scale.from && at < endOf(scale);
  const days = daysOf(midnight, scale, fold);
  if (step !== undefined) {
    const lower = clocks(midnight, step, scale, timeZone, fold);
    const upper = days
      .filter(({ at }) => at < endOf(scale))
      .map(({ day, at, px }) => ({ at, label: dayLabel(day, px, timeZone) }));
    return { upper, lower: lower.filter(sees) };
  }
  const least = Math.min(...days.map(({ px }) => px));
  const isMonday = (at: number) => wallParts(instant(at), timeZone).weekday === 1;
  const first = midnight[0] ?? scale.from;
  return {
    upper: midnight
      .filter((at) => at === first || isMonday(at))
      .map((at) => ({ at: fold.at(at), label: formatWallDate(instant(at), timeZone) })),
    lower: days.map(({ day, at }) => ({ at, label: dayLabel(day, least, timeZone) })).filter(sees),
  };
}
