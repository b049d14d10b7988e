import type { PlanSum } from '../shop/kept-plan.ts';
import { compareIds } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { latenessOf, type LineLateness } from './lateness.ts';
import type { PlanView } from './plan-view.ts';

/** By less than this a line does not end at another time. */
const MINUTE = 60;

/** A line that ends at another time. */
export interface LineMove {
  readonly lineId: string;
  /** Epoch seconds at which it ends in the one plan and in the other. */
  readonly before: number;
  readonly after: number;
  readonly due: number;
}

/** How one plan differs from another, both as they would be worked from now on. */
export interface PlanComparison {
  readonly before: PlanSum;
  readonly after: PlanSum;
  /** Lines that end earlier, later, by at least a minute; most first. */
  readonly earlier: readonly LineMove[];
  readonly later: readonly LineMove[];
  /** Lines that are late in the other plan only, in the one only; most first. */
  readonly newlyLate: readonly LineMove[];
  readonly noLongerLate: readonly LineMove[];
  /** Operations on another machine. */
  readonly otherMachine: readonly {
    readonly operation: string;
    readonly from: string;
    readonly to: string;
  }[];
}

/** @param a, b two plans of the same shop at the same instant; a line that only one of them has is left out */
export function comparePlans(shop: Shop, a: PlanView, b: PlanView): PlanComparison {
  const old = latenessOf(shop, a.schedule);
  const next = new Map(latenessOf(shop, b.schedule).map((row) => [row.lineId, row]));
  const pairs = old.flatMap((before) => {
    const after = next.get(before.lineId);
    return after ? [moveOf(before, after)] : [];
  });
  const late = (end: number, { due }: LineMove) => end > due;
  const most = (moves: LineMove[], by: (move: LineMove) => number) =>
    moves.sort((x, y) => by(y) - by(x) || compareIds(x.lineId, y.lineId));
  const sooner = (move: LineMove) => move.before - move.after;
  const machines = new Map(b.schedule.operations.map((o) => [o.operation, o.machine]));
  return {
    before: sumOf(a),
    after: sumOf(b),
    earlier: most(
      pairs.filter((move) => sooner(move) >= MINUTE),
      sooner,
    ),
    later: most(
      pairs.filter((move) => -sooner(move) >= MINUTE),
      (move) => -sooner(move),
    ),
    newlyLate: most(
      pairs.filter((move) => late(move.after, move) && !late(move.before, move)),
      (move) => move.after - move.due,
    ),
    noLongerLate: most(
      pairs.filter((move) => late(move.before, move) && !late(move.after, move)),
      (move) => move.before - move.due,
    ),
    otherMachine: a.schedule.operations
      .flatMap(({ operation, machine: from }) => {
        const to = machines.get(operation);
        return to === undefined || to === from ? [] : [{ operation, from, to }];
      })
      .sort((x, y) => compareIds(x.operation, y.operation)),
  };
}

const moveOf = ({ lineId, end, due }: LineLateness, after: LineLateness): LineMove => ({
  lineId,
  before: end,
  after: after.end,
  due,
});

/** A plan in figures. */
export const sumOf = ({ figures }: PlanView): PlanSum => ({
  lateLines: figures.lateLines,
  lateSeconds: figures.tardiness,
  changeovers: figures.changeovers,
  changeoverSeconds: figures.changeoverSeconds,
});
