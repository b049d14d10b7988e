import { applyCommand } from '../edit/apply.ts';
import { overtimeCommand } from '../edit/overtime.ts';
import type { PlanChange, Why } from '../planning/answers.ts';
import { toSearchProblem, type ShopProblem } from '../planning/to-problem.ts';
import { ok, type Result } from '../result.ts';
import { buildProblem } from '../schedule/build.ts';
import { decode } from '../schedule/decode.ts';
import { explain, type Change } from '../schedule/explain.ts';
import type { Schedule } from '../schedule/problem.ts';
import { shiftsBetween } from '../schedule/what-if/shifts.ts';
import { withoutTimes } from '../schedule/what-if/without-times.ts';
import { withChanges } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';

/**
 * Why a line ends when it does, in the plan as it is, and what would help.
 * @returns causes in order of time, changes the best first; or why there is no answer: no such line in the plan, no plan
 */
export function whyOf(shop: Shop, lineId: string, now: Instant): Result<Why> {
  const asked = toSearchProblem(shop, now);
  if (!asked.ok) return asked;
  const before = decode(asked.value.problem, asked.value.queues);
  if (!before.ok) return before;
  const explained = explain(asked.value.problem, before.value, lineId);
  if (!explained.ok) return explained;
  const changes: PlanChange[] = [];
  for (const change of explained.value.changes) {
    if (!change.overtime) {
      changes.push(withoutTimes(change));
      continue;
    }
    const opened = inCalendar(shop, asked.value, before.value, lineId, now, change);
    if (!opened.ok) return opened;
    changes.push(...opened.value);
  }
  const { job, end, due, late, causes } = explained.value;
  const awaited = awaitedBy(asked.value, lineId);
  return ok({ job, end, due, late, causes, awaited, changes });
}

/** The deliveries that a line waits for, where its work order does not hold it back longer. */
function awaitedBy({ operations }: ShopProblem, lineId: string): Why['awaited'] {
  const own = [...operations.values()].find(({ line }) => line.id === lineId);
  const arrival = own?.metal?.arrival ?? null;
  return own?.metal && arrival !== null && arrival >= (own.terms.release ?? 0) ? own.metal.awaited : [];
}

/**
 * Overtime as it will be: written into a calendar it opens every machine that keeps those hours, so the plan is timed
 * again with them. None when it then helps no more.
 */
function inCalendar(
  shop: Shop,
  { problem, queues }: ShopProblem,
  before: Schedule,
  lineId: string,
  now: Instant,
  change: Change,
): Result<PlanChange[]> {
  const command = overtimeCommand(shop, change.overtime!, `For ${lineId}`);
  const edit = command === null ? ok({ changes: [] }) : applyCommand(shop, command);
  if (!edit.ok) return edit;
  const longer = toSearchProblem(withChanges(shop, edit.value.changes), now);
  if (!longer.ok) return longer;
  const built = buildProblem({ ...problem.input, machines: longer.value.problem.input.machines });
  if (!built.ok) return built;
  const after = decode(built.value, queues);
  if (!after.ok) return after;
  const end = after.value.ends[lineId]!;
  if (end >= before.ends[lineId]!) return ok([]);
  const { later, earlier } = shiftsBetween(problem, before.ends, after.value.ends, [lineId]);
  const late = Math.max(0, end - problem.due[problem.jobAt.get(lineId)!]!);
  const objectiveAdded = after.value.objective - before.objective;
  return ok([{ ...withoutTimes(change), end, late, later, earlier, objectiveAdded }]);
}
