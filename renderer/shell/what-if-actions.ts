import { Truck, UserX, Wrench, Zap } from 'lucide-react';
import { useMemo } from 'react';
import { lineOfOperation } from '../../core/shop/order.ts';
import { useBoardView } from '../gantt/view.ts';
import { useShop } from '../queries/hooks.ts';
import { usePlace } from '../router.ts';
import { useOrdersView } from '../screens/orders/orders-view.ts';
import { openLines, openRushLines } from '../screens/what-if/rush-facts.ts';
import { askLateMetal, askRush, askTrouble } from '../screens/what-if/what-if-view.ts';
import type { Action } from './actions.ts';

/** Questions about the plan that can be asked from anywhere. */
export function useWhatIfActions(): Action[] {
  const { data: shop } = useShop();
  const none = !shop || shop.machine.length === 0;
  const screen = usePlace().path[0];
  const onOrders = screen === 'orders';
  const onBoard = useBoardView((view) => view.selected);
  const inOrders = useOrdersView((view) => view.lineId);
  const looked = onOrders ? inOrders : onBoard && lineOfOperation(onBoard);
  /** The line one looks at, a rush or not, as long as it has not started; else every open rush line. */
  const asked = useMemo(() => {
    if (!shop) return [];
    return looked && openLines(shop).includes(looked) ? [looked] : openRushLines(shop);
  }, [shop, looked]);
  /** The machine one looks at on the board, when one does. */
  const machine = (): string | null => {
    const operation = onOrders ? null : useBoardView.getState().selected;
    return shop?.queue.find((queue) => operation && queue.operations.includes(operation))?.id ?? null;
  };
  /** At a machine the letters report work: the screen there has its own. */
  const letter = (key: string) => (screen === 'floor' ? {} : { keys: key });
  return [
    {
      id: 'rush',
      label: 'Fit in a rush',
      icon: Zap,
      disabled: asked.length === 0,
      act: () => askRush(asked),
      ...letter('R'),
    },
    {
      id: 'machine-down',
      label: 'Machine down…',
      icon: Wrench,
      ...letter('D'),
      disabled: none,
      act: () => askTrouble('machine', machine()),
    },
    {
      id: 'operator-out',
      label: 'Operator out…',
      icon: UserX,
      ...letter('O'),
      disabled: none,
      act: () => askTrouble('operator', machine()),
    },
    {
      id: 'metal-late',
      label: 'Metal late…',
      icon: Truck,
      disabled: !shop || shop.delivery.length === 0,
      act: () => askLateMetal(null),
    },
  ];
}
