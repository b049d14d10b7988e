import type { MetalMissing } from '../../../core/planning/metal-missing.ts';
import { metalWords } from '../../../core/report/metal-words.ts';
import type { WorkOrder } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWallDate } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { counted } from '../../../core/units/count.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './waiting-lists.module.css';

const tags = {
  missing: { look: 'late', words: 'metal missing' },
  overdue: { look: 'late', words: 'delivery overdue' },
  awaited: { look: 'warn', words: 'metal on its way' },
} as const;

interface MetalProps {
  shop: Shop;
  rows: readonly MetalMissing[];
  now: number;
  onOpen: (operation: string) => void;
}

/** The lines that cannot be sheared from what lies in the shop, and what each waits for. */
function MetalList({ shop, rows, now, onOpen }: MetalProps) {
  return (
    <ul className={styles.list} aria-label="Lines whose metal is not there">
      {rows.map(({ operation, is, ...lacks }) => (
        <li key={operation.id} className={styles.row}>
          <p className={styles.title}>
            <Button
              small
              look="quiet"
              aria-label={`Show ${operation.line.id} on the board`}
              onPress={() => onOpen(operation.id)}
            >
              {operation.line.id}
            </Button>
            <Tag look={tags[is].look}>{tags[is].words}</Tag>
          </p>
          <p className={styles.soft}>{operation.order.customer}</p>
          {metalWords(shop, lacks, now).map((words) => (
            <p key={words}>{words}</p>
          ))}
        </li>
      ))}
      <li className={styles.row}>
        <Button small onPress={() => navigate('stock')}>
          Stock and deliveries
        </Button>
      </li>
    </ul>
  );
}

const heldOrders = (shop: Shop): readonly WorkOrder[] =>
  shop.order
    .filter(({ status }) => status === 'held')
    .sort((a, b) => a.due - b.due || (a.id < b.id ? -1 : 1));

/** The work orders that are held, none of whose lines is planned, and why. */
function HeldList({ shop, orders }: { shop: Shop; orders: readonly WorkOrder[] }) {
  const openLines = (order: WorkOrder) =>
    shop.line.filter(({ orderId, status }) => orderId === order.id && status === 'open').length;
  return (
    <ul className={styles.list} aria-label="Held work orders">
      {orders.map((order) => (
        <li key={order.id} className={styles.row}>
          <p className={styles.title}>
            <Button
              small
              look="quiet"
              aria-label={`Open work order ${order.id}`}
              onPress={() => navigate('orders', order.id)}
            >
              {order.id}
            </Button>
            <span>{order.customer}</span>
          </p>
          <p className={styles.soft}>
            {`${counted(openLines(order), 'open line')}, due ${formatWallDate(instant(order.due), shop.settings.timeZone)}`}
          </p>
          <p>{order.note || 'No reason is noted.'}</p>
        </li>
      ))}
    </ul>
  );
}

interface Waiting {
  shop: Shop;
  now: number;
  missing: readonly MetalMissing[];
  onOpen: (operation: string) => void;
}

/** Tabs for what waits for metal and what is held; each only where there is any, since the tabs are many. */
export function waitingTabs({ shop, now, missing, onOpen }: Waiting) {
  const held = heldOrders(shop);
  const metal = <MetalList {...{ shop, now, onOpen }} rows={missing} />;
  return [
    { id: 'metal', label: 'Metal', count: missing.length, content: metal },
    { id: 'held', label: 'Held', count: held.length, content: <HeldList shop={shop} orders={held} /> },
  ].filter(({ count }) => count > 0);
}
