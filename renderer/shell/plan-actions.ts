import { Bookmark, Send } from 'lucide-react';
import { useShop } from '../queries/hooks.ts';
import { useUnpublished } from '../queries/plans.ts';
import { usePlace } from '../router.ts';
import { usePlansView } from '../screens/plans/plans-view.ts';
import type { Action } from './actions.ts';

/** Publishing, where plans are published by hand, and the plans that are kept. */
export function usePlanActions(): Action[] {
  const { data: shop } = useShop();
  const changed = useUnpublished().size;
  const { ask } = usePlansView();
  // At a machine the letters report work: the screen there has its own.
  const letter = (keys: string) => (onFloor ? {} : { keys });
  const onFloor = usePlace().path[0] === 'floor';
  const publish: Action = {
    id: 'publish',
    label: 'Publish the plan…',
    icon: Send,
    ...letter('U'),
    disabled: changed === 0,
    act: () => ask('publish'),
  };
  return [
    ...(shop?.settings.publishing === 'byHand' ? [publish] : []),
    {
      id: 'plans',
      label: 'Plans: keep, compare, go back…',
      icon: Bookmark,
      ...letter('K'),
      disabled: !shop,
      act: () => ask('plans'),
    },
  ];
}
