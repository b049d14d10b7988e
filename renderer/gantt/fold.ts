import { subtract, union, type Interval } from '../../core/time/interval.ts';
import { isElsewhere } from '../../core/part/stage.ts';
import type { PlanView } from '../../core/planning/plan-view.ts';
import { HOUR } from '../../core/units/duration.ts';
import { firstWhere, near, type Bar, type Lane } from './lanes.ts';
import { endOf, type Scale } from './scale.ts';

/**
 * Closed time folded away: the board is drawn in board seconds, which stand still while nobody works. Lanes are folded
 * before they are drawn, so that scale, hit-test and drop need not know.
 */
export interface Fold {
  /** Board second of an instant; all of a folded stretch is one. */
  readonly at: (instant: number) => number;
  /** Instant of a board second; where a stretch is folded, its end. */
  readonly back: (boardSecond: number) => number;
  /** Where something is folded, in board seconds, ascending, and how many seconds are gone there. */
  readonly breaks: readonly { readonly at: number; readonly seconds: number }[];
}

/** Nothing is folded: board seconds are instants. */
export const flat: Fold = { at: (instant) => instant, back: (boardSecond) => boardSecond, breaks: [] };

/** A break shorter than this stays: folding it would save no room and hide that one rests. */
const LEAST_S = HOUR;

/** @param closed ascending and disjoint; epoch seconds */
export function foldOf(closed: readonly Interval[]): Fold {
  const long = closed.filter(({ start, end }) => end - start >= LEAST_S);
  if (long.length === 0) return flat;
  let gone = 0;
  const stretches = long.map(({ start, end }) => {
    const before = gone;
    gone += end - start;
    return { start, end, before };
  });
  const breaks = stretches.map(({ start, end, before }) => ({ at: start - before, seconds: end - start }));
  return {
    breaks,
    at(instant) {
      const last = stretches[firstWhere(stretches, ({ start }) => start > instant) - 1];
      return last ? Math.max(last.start, instant - (last.end - last.start)) - last.before : instant;
    },
    back(boardSecond) {
      const last = stretches[firstWhere(breaks, ({ at }) => at > boardSecond) - 1];
      return last ? boardSecond + last.before + (last.end - last.start) : boardSecond;
    },
  };
}

/** The hours in which no machine of the shop is open; outside shops, and machines that never open, do not count. */
export function shutTogether({ problem, shut }: PlanView, lanes: readonly Lane[], horizon: Interval) {
  const own = new Set(
    lanes
      .filter(({ machine }) => !isElsewhere(machine.stage) && !shut.has(machine.id))
      .map((l) => l.machine.id),
  );
  const inputs = problem.input.machines.filter(({ id }) => own.has(id));
  if (inputs.length === 0 || inputs.some(({ open }) => !open)) return [];
  return subtract(
    [horizon],
    union(inputs.flatMap(({ open }) => near(open ?? [], horizon.start, horizon.end))),
  );
}

export const foldInterval = (fold: Fold, { start, end }: Interval): Interval => ({
  start: fold.at(start),
  end: fold.at(end),
});

const foldAll = (fold: Fold, stretches: readonly Interval[]): Interval[] =>
  stretches.map((stretch) => foldInterval(fold, stretch)).filter(({ start, end }) => end > start);

const foldBar = (fold: Fold, bar: Bar): Bar => ({
  ...bar,
  changeoverStart: fold.at(bar.changeoverStart),
  ...foldInterval(fold, bar),
  pieces: foldAll(fold, bar.pieces),
  changeoverPieces: foldAll(fold, bar.changeoverPieces),
});

const foldLane = (fold: Fold, lane: Lane): Lane => ({
  ...lane,
  bars: lane.bars.map((bar) => foldBar(fold, bar)),
  runs: lane.runs.map((run) => ({ ...run, ...foldInterval(fold, run) })),
  closed: foldAll(fold, lane.closed),
  dues: lane.dues.map(fold.at),
});

/** Lanes folded already: one that is the same as before is drawn as before. */
const folded = new WeakMap<Fold, WeakMap<Lane, Lane>>();

/** Lanes in board seconds. A bar's due date stays the instant that it is, since it is told in words. */
export function foldLanes(lanes: readonly Lane[], fold: Fold): readonly Lane[] {
  if (fold === flat) return lanes;
  const known = folded.get(fold) ?? new WeakMap<Lane, Lane>();
  folded.set(fold, known);
  return lanes.map((lane) => {
    const own = known.get(lane) ?? foldLane(fold, lane);
    known.set(lane, own);
    return own;
  });
}

/** The breaks in sight. */
export const breaksIn = (fold: Fold, scale: Scale): Fold['breaks'] =>
  fold.breaks.filter(({ at }) => at >= scale.from && at < endOf(scale));
