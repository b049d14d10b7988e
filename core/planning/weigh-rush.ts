import { ok, type Result } from '../result.ts';
import type { Problem, Queues } from '../schedule/problem.ts';
import { insertRush, soonestRush } from '../schedule/rush.ts';
import { advisedWay } from '../schedule/rush/advise.ts';
import type { RushWay } from '../schedule/rush/way.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';
import type { FrozenInTheWay } from './answers.ts';
import { toSearchProblem } from './to-problem.ts';

/** A rush weighed: the two quick ways, and what the third one begins with. */
export interface WeighedRush {
  /** Metal is given to the rush first. */
  readonly problem: Problem;
  /** The same as metal is given out without a rush. */
  readonly asPlanned: Problem;
  readonly ways: readonly RushWay[];
  /** The queues of the quick way that is advised. */
  readonly start: Queues;
  /** Null where the rush would be ready no sooner without the frozen window. */
  readonly frozen: FrozenInTheWay | null;
}

/**
 * The quick ways to take lines into the plan as it is.
 * @param intoFrozen the frozen window does not hold this time; what is started or pinned stays
 * @returns the ways; or what `toSearchProblem` and `insertRush` refuse
 */
export function weighRush(
  shop: Shop,
  now: Instant,
  lineIds: readonly string[],
  intoFrozen = false,
): Result<WeighedRush> {
  const { frozenHours } = shop.settings;
  const unfrozen: Shop = { ...shop, settings: { ...shop.settings, frozenHours: 0 } };
  const first = shop.delivery.length === 0 ? [] : lineIds;
  const asked = toSearchProblem(intoFrozen ? unfrozen : shop, now, first);
  if (!asked.ok) return asked;
  const planned = first.length === 0 ? asked : toSearchProblem(intoFrozen ? unfrozen : shop, now);
  if (!planned.ok) return planned;
  const { problem, queues } = asked.value;
  const asPlanned = planned.value.problem;
  const ways = insertRush(problem, queues, lineIds, asPlanned);
  if (!ways.ok) return ways;
  const weighed = { problem, asPlanned, ways: ways.value, start: advisedWay(ways.value).queues };
  if (frozenHours === 0) return ok({ ...weighed, frozen: null });
  const other = toSearchProblem(intoFrozen ? shop : unfrozen, now, first);
  if (!other.ok) return other;
  const elsewise = soonestRush(other.value.problem, other.value.queues, lineIds);
  const here = ok(ways.value[0]!);
  const [fenced, free] = intoFrozen ? [elsewise, here] : [here, elsewise];
  const operations = heldBack(intoFrozen ? other.value.problem : problem, lineIds);
  const held = fenced.ok ? fenced.value.ready : Infinity;
  if (!free.ok || operations === 0 || free.value.ready >= held) return ok({ ...weighed, frozen: null });
  const { ready, late } = free.value;
  return ok({ ...weighed, frozen: { hours: frozenHours, operations, ready, late } });
}

/** How many operations that have not started the frozen window holds in front, the rush's own left out. */
function heldBack(problem: Problem, lineIds: readonly string[]): number {
  const rush = new Set(lineIds.map((id) => problem.jobAt.get(id)));
  return problem.front.reduce(
    (sum, front) =>
      sum + front.filter((o) => Number.isNaN(problem.startedAt[o]!) && !rush.has(problem.jobOf[o]!)).length,
    0,
  );
}
