import { blanksWords } from '../../../core/report/blank-words.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatCutLength, formatCutSize, type Units } from '../../../core/units/length.ts';
import { classes } from '../../ui/classes.ts';
import styles from './cutting.module.css';
import drawing from './drawing.module.css';
import { orderLooks, type OrderLook } from './order-look.ts';
import { SheetDrawing } from './sheet-drawing.tsx';

/** Every kind of sheet of a run to one scale, and whose blanks they are. */
export function Sheets({ shop, cut }: { shop: Shop; cut: RunCut }) {
  if (!cut.plan.ok) return null;
  const { groups, nearEqual } = cut.plan.value;
  const looks = orderLooks(cut);
  const longestMm = Math.max(1, ...groups.map((group) => group.lengthMm));
  return (
    <div className={styles.sheets}>
      <ul className={styles.legend}>
        {[...looks].map(([id, look]) => (
          <li key={id}>
            <Swatch look={look} />
            {`${id} ${orderWords(cut, id, shop.settings)}`}
          </li>
        ))}
      </ul>
      <div className={styles.drawings}>
        {groups.map((group) => (
          <SheetDrawing
            key={group.id}
            group={group}
            units={shop.settings}
            looks={looks}
            longestMm={longestMm}
          />
        ))}
      </div>
      {nearEqual.map(({ lines, differenceMm }) => (
        <p key={lines.join()} className={styles.soft}>
          {`${lines[0]} and ${lines[1]} differ by ${formatCutLength(differenceMm, shop.settings)}; they are cut apart.`}
        </p>
      ))}
    </div>
  );
}

const Swatch = ({ look: { ground, pattern } }: { look: OrderLook }) => (
  <svg width="26" height="16" aria-hidden>
    <rect
      x="0.5"
      y="0.5"
      width="25"
      height="15"
      className={classes(drawing.blank, drawing[`ground${ground}`])}
    />
    {pattern > 0 && <rect width="26" height="16" fill={`url(#blank-pattern-${pattern})`} />}
  </svg>
);

function orderWords({ run }: RunCut, orderId: string, units: Units): string {
  const own = run.operations.filter((o) => o.order.id === orderId);
  const lines = own.map(
    ({ line, quantity, extra, blank }) =>
      `${line.id}: ${blanksWords(quantity, extra)} of ${formatCutSize(blank.girthMm, blank.lengthMm, units)}`,
  );
  return `${own[0]?.order.customer ?? ''} (${lines.join('; ')})`;
}
