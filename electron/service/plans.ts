import type { AnswerOf, OutputOf } from '../../core/contract/call.ts';
import type {
  DoneBefore,
  DoneEntry,
  historyRead,
  plansCompare,
  plansList,
  plansPublished,
  SavedPlan,
  WhichPlan,
} from '../../core/contract/plans.ts';
import type { SeenQueues } from '../../core/edit/stale.ts';
import { comparePlans } from '../../core/planning/compare-plans.ts';
import { followedShop, withPlan } from '../../core/planning/followed-plan.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import { formatDayAndClock } from '../../core/time/wall.ts';
import { Refused, valueOf } from '../refused.ts';
import type { Clock } from './clock.ts';
import type { Applied, EditService } from './edit.ts';
import { planToKeep } from './kept-plan.ts';
import type { LivingShop } from './living-shop.ts';

/** Plans that were kept and published: looked at, compared, gone back to; and the story of what was done. */
export const plansService = (living: LivingShop, clock: Clock, edit: EditService) => {
  const read = (id: number): SavedPlan => {
    const plan = living.store.run('read a plan', ({ plans }) => plans.get(id));
    if (plan) return plan;
    throw new Refused(
      'refused',
      'This plan is not kept any more, or cannot be read. Nothing was changed; choose another in the list of plans.',
    );
  };
  const shopWith = (which: WhichPlan) => {
    if (which === 'draft') return living.shop;
    return which === 'published' ? followedShop(living.shop) : withPlan(living.shop, read(which).queues);
  };
  return {
    read,

    list: (before: number | null, limit: number): AnswerOf<typeof plansList> =>
      living.store.run('list plans', ({ plans }) => {
        const found = plans.list(before, limit + 1);
        return { plans: found.slice(0, limit), more: found.length > limit };
      }),

    published: (): AnswerOf<typeof plansPublished> =>
      living.store.run('read what is published', ({ plans }) => {
        const [last, before] = living.shop.settings.publishing === 'always' ? [] : plans.published(2);
        if (!last) return { last: null, before: null };
        const { id, name, what, at, by, figures, undone } = last;
        return { last: { id, name, what, at, by, figures, undone }, before: before ?? null };
      }),

    /** @returns its id */
    keep: (name: string, by: string): number =>
      living.store.run('keep the plan', ({ plans }) =>
        plans.add({
          ...{ name, what: 'named', at: clock.now(), by, stepId: null },
          ...planToKeep(living.shop, clock.now()),
        }),
      ),

    /** @param seen the queues as who asks saw them */
    goBack(id: number, seen: SeenQueues, by: string): Applied {
      const { name, what, at, queues, pins } = read(id);
      const when = formatDayAndClock(at, living.shop.settings.timeZone);
      const title = what === 'named' ? `“${name}”` : `the plan published ${when}`;
      const own = Object.fromEntries(Object.entries(queues).map(([machine, ids]) => [machine, [...ids]]));
      return edit.apply({ do: 'plan.goBack', name: title, queues: own, pins: [...pins], seen }, by);
    },

    /** Both as they would be worked from now on. @throws Refused when nothing can be planned */
    compare(a: WhichPlan, b: WhichPlan): OutputOf<typeof plansCompare> {
      const now = clock.now();
      return comparePlans(
        living.shop,
        valueOf(viewPlan(shopWith(a), now)),
        valueOf(viewPlan(shopWith(b), now)),
      );
    },

    history: (before: DoneBefore | null, limit: number): AnswerOf<typeof historyRead> =>
      living.store.run('read what was done', ({ done }) => {
        const found = done.page(before, limit + 1);
        const entries = found.slice(0, limit);
        return { entries, next: found.length > limit ? behind(entries, before) : null };
      }),
  };
};

/** Where the page after this one begins. */
function behind(entries: readonly DoneEntry[], before: DoneBefore | null): DoneBefore {
  const oldest = (kind: DoneEntry['is']) =>
    entries.findLast(({ is }) => is === kind)?.id ?? before?.[kind] ?? Number.MAX_SAFE_INTEGER;
  return { step: oldest('step'), fact: oldest('fact'), plan: oldest('plan') };
}
