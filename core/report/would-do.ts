import { applyCommand } from '../edit/apply.ts';
import type { Command } from '../edit/command.ts';
import { viewPlan } from '../planning/plan-view.ts';
import { ok, type Result } from '../result.ts';
import { withChanges } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { counted } from '../units/count.ts';
import type { Instant } from '../units/brand.ts';

/** What a command would do to the plan as it stands: lines late with its queues before and after. */
export interface WouldDo {
  readonly before: number;
  readonly after: number;
}

/**
 * Carries a command out on a copy and times the present queues with what it changes; nothing is stored, nothing planned.
 * @returns late lines; or why the command is refused or the plan cannot be timed
 */
export function wouldDo(shop: Shop, command: Command, now: Instant): Result<WouldDo> {
  const edit = applyCommand(shop, command);
  if (!edit.ok) return edit;
  const [present, next] = [viewPlan(shop, now), viewPlan(withChanges(shop, edit.value.changes), now)];
  if (!present.ok) return present;
  if (!next.ok) return next;
  return ok({ before: present.value.figures.lateLines, after: next.value.figures.lateLines });
}

/** In a sentence, and whether planning again is worth a press. */
export function wouldDoWords({ before, after }: WouldDo): string {
  if (before === after)
    return before === 0
      ? 'With the queues as they are, no line would be late, as now.'
      : `With the queues as they are, ${counted(before, 'line')} would be late, as now.`;
  return `Late lines: ${before} → ${after}, with the queues as they are. Planning again finds the order that suits the new times.`;
}
