import { Zap } from 'lucide-react';
import { lineOfOperation } from '../../core/shop/order.ts';
import { useBoardView } from '../gantt/view.ts';
import { useShop } from '../queries/hooks.ts';
import { usePlace } from '../router.ts';
import { useOrdersView } from '../screens/orders/orders-view.ts';
import { openRushLines } from '../screens/what-if/rush-facts.ts';
import { askRush } from '../screens/what-if/what-if-view.ts';
import type { Action } from './actions.ts';

/** Questions about the plan that can be asked from anywhere. */
export function useWhatIfActions(): Action[] {
  const { data: shop } = useShop();
  const onOrders = usePlace().path[0] === 'orders';
  const open = shop ? openRushLines(shop) : [];
  /** The line one looks at when it is a rush, else every open rush line. */
  const rush = () => {
    const operation = useBoardView.getState().selected;
    const looked = onOrders ? useOrdersView.getState().lineId : operation && lineOfOperation(operation);
    askRush(looked && open.includes(looked) ? [looked] : open);
  };
  return [
    { id: 'rush', label: 'Take a rush in', icon: Zap, keys: 'R', disabled: open.length === 0, act: rush },
  ];
}
