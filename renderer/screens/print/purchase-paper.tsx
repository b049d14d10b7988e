import { metalName } from '../../../core/shop/metal-name.ts';
import { formatCutSize } from '../../../core/units/length.ts';
import type { Purchase } from '../../../core/planning/stock-use.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock, formatWallDate } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { formatMoney } from '../../../core/units/money.ts';
import styles from './print.module.css';
import stock from './stock-paper.module.css';
import { ColumnHeads } from '../../ui/column-heads.tsx';

interface Props {
  shop: Shop;
  purchases: readonly Purchase[];
  now: Instant;
}

/** What to buy, what is needed first on top. */
export function PurchasePaper({ shop, purchases, now }: Props) {
  const { timeZone, units, name } = shop.settings;
  return (
    <section
      className={`${units === 'in' ? styles.letter : styles.a4} ${stock.paper}`}
      aria-label="Purchase list"
    >
      <div className={styles.head}>
        <h1>Purchase list</h1>
        <span>{`${name}, printed ${formatDayAndClock(now, timeZone)}`}</span>
      </div>
      {purchases.length === 0 && <p>Nothing is missing: the stock on hand is enough for the plan.</p>}
      <table className={`${styles.paper} ${stock.table}`}>
        <thead>
          <tr className={styles.columns}>
            <ColumnHeads
              heads={['Needed by', 'Stock', 'Metal', 'Width × length', 'Pieces', 'Cost', 'For runs']}
            />
          </tr>
        </thead>
        <tbody>
          {purchases.map(({ sheet, pieces, costCents, neededBy, runs }) => (
            <tr key={sheet.id} className={styles.row}>
              <td>{formatWallDate(neededBy, timeZone)}</td>
              <td>{sheet.id}</td>
              <td>{metalName(shop, sheet)}</td>
              <td>{formatCutSize(sheet.widthMm, sheet.lengthMm, shop.settings)}</td>
              <td className={styles.figure}>{pieces}</td>
              <td className={styles.figure}>{formatMoney(costCents, shop.settings)}</td>
              <td>{runs.join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
