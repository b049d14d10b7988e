import type { RushWay } from './way.ts';

type Figures = Pick<RushWay, 'late' | 'objectiveAdded'>;

/** Less than this is no difference. */
const TINY = 1e-6;

/**
 * Below 0 when the first way is to be advised before the second: a rush is taken in to keep its own date, so that comes
 * first, and what the plan costs decides between ways that keep it equally.
 */
export const byAdvice = (a: Figures, b: Figures): number =>
  Math.abs(a.late - b.late) > TINY ? a.late - b.late : costOrder(a, b);

const costOrder = (a: Figures, b: Figures): number =>
  Math.abs(a.objectiveAdded - b.objectiveAdded) > TINY ? a.objectiveAdded - b.objectiveAdded : 0;

/** The way to advise, the first of equally good ones. @param ways at least one */
export const advisedWay = <T extends Figures>(ways: readonly T[]): T =>
  ways.reduce((best, way) => (byAdvice(way, best) < 0 ? way : best));

/** The one that costs least, the first of equally cheap ones. @param ways at least one */
export const cheapestWay = <T extends Figures>(ways: readonly T[]): T =>
  ways.reduce((best, way) => (costOrder(way, best) < 0 ? way : best));
