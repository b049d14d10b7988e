import type { PlanChange, Why } from '../../core/planning/answers.ts';
import { applyCommand } from '../../core/edit/apply.ts';
import { overtimeCommand } from '../../core/edit/overtime.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { decode } from '../../core/schedule/decode.ts';
import { explain, type Change } from '../../core/schedule/explain.ts';
import type { Schedule } from '../../core/schedule/problem.ts';
import { shiftsBetween } from '../../core/schedule/what-if/shifts.ts';
import { withoutTimes } from '../../core/schedule/what-if/without-times.ts';
import { toSearchProblem, type ShopProblem } from '../../core/planning/to-problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Instant } from '../../core/units/brand.ts';
import { valueOf } from '../refused.ts';

/**
 * Why a line ends when it does, in the plan as it stands, and what would help.
 * @throws Refused for a line that is not in the plan
 */
export function whyOf(shop: Shop, lineId: string, now: Instant): Why {
  const asked = valueOf(toSearchProblem(shop, now));
  const before = valueOf(decode(asked.problem, asked.queues));
  const { job, end, due, late, causes, changes } = valueOf(explain(asked.problem, before, lineId));
  return {
    job,
    end,
    due,
    late,
    causes,
    changes: changes.flatMap((change) =>
      change.overtime ? inCalendar(shop, asked, before, lineId, now, change) : [withoutTimes(change)],
    ),
  };
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
): PlanChange[] {
  const command = overtimeCommand(shop, change.overtime!, `For ${lineId}`);
  const { changes } = command ? valueOf(applyCommand(shop, command)) : { changes: [] };
  const longer = valueOf(toSearchProblem(withChanges(shop, changes), now)).problem.input.machines;
  const after = valueOf(decode(valueOf(buildProblem({ ...problem.input, machines: longer })), queues));
  const end = after.ends[lineId]!;
  if (end >= before.ends[lineId]!) return [];
  const { later, earlier } = shiftsBetween(problem, before.ends, after.ends, [lineId]);
  return [
    {
      ...withoutTimes(change),
      end,
      late: Math.max(0, end - problem.due[problem.jobAt.get(lineId)!]!),
      later,
      earlier,
      objectiveAdded: after.objective - before.objective,
    },
  ];
}
