import { MAD_TO_SD, median, medianDeviation } from './robust.ts';

/** One operation's log(actual / estimate) and the machine's day on which it was done. */
export interface DayRatio {
  readonly day: string;
  readonly logRatio: number;
}

/** Further off than this many standard deviations an operation's own trouble is not blamed on its day. */
const CLIP = 3;
/** One-sided 1 % of a normal distribution. */
const SURE = 2.326;

interface Day {
  /** Mean of its clipped log ratios, about the middle of all. */
  readonly mean: number;
  readonly size: number;
}

interface Parts {
  /** The middle of all log ratios. */
  readonly middle: number;
  /** Variance between days; 0 where they do not show. */
  readonly between: number;
  readonly days: ReadonlyMap<string, Day>;
}

/**
 * Splits ratios into what a whole day shares (a stand-in at the machine, bad coil) and what is each operation's own,
 * where the records show days at all: one-way analysis of variance, unequal group sizes, the day's share counted only
 * when F is above its 1 % point (normal approximation). Source: S. R. Searle, G. Casella, C. E. McCulloch, Variance
 * Components, 1992, chapter 3 (from memory).
 * @returns factors, ascending: the operations' own, with the usual ratio in them, and the days'
 */
export function dayFactors(all: readonly DayRatio[]): { ratios: number[]; days: number[] } {
  const sorted = all.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.logRatio - b.logRatio));
  const parts = analyse(sorted);
  const rising = (logs: number[]): number[] => logs.map(Math.exp).sort((a, b) => a - b);
  if (parts === null || parts.between === 0)
    return { ratios: rising(sorted.map((r) => r.logRatio)), days: [1] };

  const { middle, between, days } = parts;
  const centre = meanOf([...days.values()].map((d) => d.mean));
  const seen = Math.sqrt(meanOf([...days.values()].map((d) => (d.mean - centre) ** 2)));
  // Means of a few operations vary more than the days do; drawn in to the days' own spread.
  const drawnIn = [...days.values()].map((d) => ((d.mean - centre) * Math.sqrt(between)) / seen);
  // Deviations from a mean that holds the operation itself are too small; alone on its day it has none.
  const own = sorted.flatMap(({ day, logRatio }) => {
    const { mean, size } = days.get(day)!;
    return size < 2 ? [] : [middle + centre + (logRatio - middle - mean) * Math.sqrt(size / (size - 1))];
  });
  return { ratios: rising(own), days: rising(drawnIn) };
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Variances between and within days; null where there are too few days or operations to tell. */
function analyse(sorted: readonly DayRatio[]): Parts | null {
  const logs = sorted.map((r) => r.logRatio);
  const middle = median(logs);
  const reach = CLIP * MAD_TO_SD * medianDeviation(logs, middle);
  const groups = new Map<string, number[]>();
  for (const { day, logRatio } of sorted) {
    const clipped = Math.max(-reach, Math.min(reach, logRatio - middle));
    const group = groups.get(day) ?? [];
    group.push(clipped);
    groups.set(day, group);
  }
  const [n, j] = [sorted.length, groups.size];
  if (j < 5 || n - j < 5 || reach === 0) return null;

  const days = new Map(
    [...groups].map(([day, values]) => [day, { mean: meanOf(values), size: values.length }]),
  );
  const grand = meanOf([...groups.values()].flat());
  let [amongDays, inDays, squares] = [0, 0, 0];
  for (const [day, values] of groups) {
    const { mean, size } = days.get(day)!;
    amongDays += size * (mean - grand) ** 2;
    inDays += values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
    squares += size ** 2;
  }
  const [msBetween, within] = [amongDays / (j - 1), inDays / (n - j)];
  const size = (n - squares / n) / (j - 1);
  const needed = 1 + SURE * Math.sqrt(2 / (j - 1) + 2 / (n - j));
  const shown = msBetween > needed * within;
  return { middle, between: shown ? (msBetween - within) / size : 0, days };
}
