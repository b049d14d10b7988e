import { useState } from 'react';
import type { WhichPlan } from '../../../core/contract/plans.ts';
import { usePlans } from '../../queries/plans.ts';
import { useShop } from '../../queries/hooks.ts';
import { Dialog } from '../../ui/dialog.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { KeepPlan } from './keep-plan.tsx';
import { PlanComparing } from './plan-comparing.tsx';
import { PlanList } from './plan-list.tsx';

/** Plans that were kept or published: keep one, go back to one, compare two. */
export function PlansDialog({ onClose }: { onClose: () => void }) {
  const { data: shop } = useShop();
  const { data, error, hasNextPage, fetchNextPage } = usePlans();
  const byHand = shop?.settings.publishing === 'byHand';
  const [tab, setTab] = useState('kept');
  const [pair, setPair] = useState<{ a: WhichPlan; b: WhichPlan } | null>(null);
  const plans = data?.pages.flatMap((page) => page.plans) ?? [];
  const first = plans[0]?.id ?? 'draft';
  const { a, b } = pair ?? { a: byHand ? 'published' : first, b: 'draft' };
  return (
    <Dialog title="Plans" isOpen onClose={onClose} wide>
      {error && <SentenceError message={error.message} />}
      {!data && !error && <Waiting doing="Reading the plans" />}
      {shop && data && (
        <Tabs
          label="Plans"
          selected={tab}
          onSelect={setTab}
          tabs={[
            {
              id: 'kept',
              label: 'Kept and published',
              content: (
                <>
                  <KeepPlan />
                  <PlanList
                    plans={plans}
                    timeZone={shop.settings.timeZone}
                    onCompare={(id) => {
                      setPair({ a: id, b: 'draft' });
                      setTab('compare');
                    }}
                    onGone={onClose}
                    onMore={hasNextPage ? () => void fetchNextPage() : null}
                  />
                </>
              ),
            },
            {
              id: 'compare',
              label: 'Compare two',
              content: (
                <PlanComparing
                  {...{ plans, a, b, byHand }}
                  timeZone={shop.settings.timeZone}
                  onChoose={(next) => setPair({ a, b, ...next })}
                />
              ),
            },
          ]}
        />
      )}
    </Dialog>
  );
}
