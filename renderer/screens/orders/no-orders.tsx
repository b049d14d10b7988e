import { ClipboardList, FileUp, Plus } from 'lucide-react';
import { orderColumns } from '../../../core/import/order-fields.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/states.tsx';
import { openImport } from '../import/kinds.ts';
import { exampleRow } from './example-row.ts';
import styles from './orders.module.css';

/** No orders yet: how they come in, and what a file of them looks like. */
export const NoOrders = ({ shop }: { shop: Shop }) => (
  <EmptyState icon={ClipboardList} title="No work orders yet">
    <p>
      Import a file of them, drop one anywhere on this window, paste rows (Ctrl+V), or type the first by hand.
    </p>
    <div className={styles.ways}>
      <Button look="primary" icon={FileUp} onPress={() => openImport('orders')}>
        Import from a file
      </Button>
      <Button icon={Plus} onPress={() => navigate('orders', '+')}>
        New work order
      </Button>
    </div>
    <FileExample shop={shop} />
  </EmptyState>
);

/** The columns of an order file with one row filled in. */
export function FileExample({ shop }: { shop: Shop }) {
  const example = exampleRow(shop);
  return (
    <div className={styles.example}>
      <p>
        One row a line; the columns may come in any order, and line, extra pieces, material, length, not
        before, importance, rush and note may be left out.
      </p>
      <div className={styles.exampleScroll}>
        <table>
          <thead>
            <tr>
              {orderColumns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              {orderColumns.map((column) => (
                <td key={column}>{example[column]}</td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
    </div>
  );
}
