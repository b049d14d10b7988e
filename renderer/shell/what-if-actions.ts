import { UserX, Wrench, Zap } from 'lucide-react';
import { lineOfOperation } from '../../core/shop/order.ts';
import { useBoardView } from '../gantt/view.ts';
import { useShop } from '../queries/hooks.ts';
import { usePlace } from '../router.ts';
import { useOrdersView } from '../screens/orders/orders-view.ts';
import { openRushLines } from '../screens/what-if/rush-facts.ts';
import { askRush, askTrouble } from '../screens/what-if/what-if-view.ts';
import type { Action } from './actions.ts';

/** Questions about the plan that can be asked from anywhere. */
export function useWhatIfActions(): Action[] {
  const { data: shop } = useShop();
  const none = !shop || shop.machine.length === 0;
  const onOrders = usePlace().path[0] === 'orders';
  const open = shop ? openRushLines(shop) : [];
  /** The line one looks at when it is a rush, else every open rush line. */
  const rush = () => {
    const operation = useBoardView.getState().selected;
    const looked = onOrders ? useOrdersView.getState().lineId : operation && lineOfOperation(operation);
    askRush(looked && open.includes(looked) ? [looked] : open);
  };
  /** The machine one looks at on the board, when one does. */
  const machine = (): string | null => {
    const operation = onOrders ? null : useBoardView.getState().selected;
    return shop?.queue.find((queue) => operation && queue.operations.includes(operation))?.id ?? null;
  };
  return [
    { id: 'rush', label: 'Take a rush in', icon: Zap, keys: 'R', disabled: open.length === 0, act: rush },
    {
      id: 'machine-down',
      label: 'Machine down…',
      icon: Wrench,
      keys: 'D',
      disabled: none,
      act: () => askTrouble('machine', machine()),
    },
    {
      id: 'operator-out',
      label: 'Operator out…',
      icon: UserX,
      keys: 'O',
      disabled: none,
      act: () => askTrouble('operator', machine()),
    },
  ];
}
