import type { FrozenInTheWay } from '../../../core/planning/answers.ts';
import { frozenSentence } from '../../../core/report/rush-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { CheckBox } from '../../ui/check-box.tsx';
import type { RushOrder } from './rush-facts.ts';
import styles from './what-if.module.css';

interface OrdersProps {
  orders: readonly RushOrder[];
  /** Those that stay where they are. */
  left: ReadonlySet<string>;
  onLeave: (left: ReadonlySet<string>) => void;
}

/** Several rush orders: weighed together, or one at a time; what is not ticked stays where it stands. */
export function ChooseOrders({ orders, left, onLeave }: OrdersProps) {
  const tick = (id: string, on: boolean) => {
    const next = new Set(left);
    if (on) next.delete(id);
    else next.add(id);
    onLeave(next);
  };
  return (
    <fieldset className={styles.choices}>
      <legend>Weighed together. What is not ticked stays where it stands.</legend>
      {orders.map(({ id, words }) => (
        <CheckBox key={id} label={words} isSelected={!left.has(id)} onChange={(on) => tick(id, on)} />
      ))}
      {left.size === orders.length && <p role="status">Tick at least one order.</p>}
    </fieldset>
  );
}

interface FrozenProps {
  shop: Shop;
  frozen: FrozenInTheWay;
  intoFrozen: boolean;
  onChange: (intoFrozen: boolean) => void;
}

/** What the frozen window holds in front of the rush; it may be planned into for this once. */
export const FrozenWindow = ({ shop, frozen, intoFrozen, onChange }: FrozenProps) => (
  <div className={styles.choices}>
    <p>{frozenSentence(frozen, shop.settings)}</p>
    <CheckBox
      label="Plan into the frozen window this time: tell the machines what changes"
      isSelected={intoFrozen}
      onChange={onChange}
    />
  </div>
);
