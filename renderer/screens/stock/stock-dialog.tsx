import { useRef, useState } from 'react';
import { stockName } from '../../../core/edit/stock-commands.ts';
import type { Command } from '../../../core/edit/command.ts';
import { takenByDay, type StockRow } from '../../../core/planning/stock-use.ts';
import type { Lot } from '../../../core/material/lot.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatWallDate } from '../../../core/time/wall.ts';
import { usePresent } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Tag } from '../../ui/tag.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { toastError } from '../../ui/toast.tsx';
import { LotFields } from '../../form/lot-fields.tsx';
import { useAct } from '../../form/use-act.ts';
import { expectedOf, reservedOf } from './stock-list.tsx';
import styles from './stock.module.css';
import { ColumnHeads } from '../../ui/column-heads.tsx';

interface Props {
  shop: Shop;
  row: StockRow;
  onClose: () => void;
}

/** One stock: receive it, set its count, add or subtract, one entry of its history each; and what the plan takes of it when. */
export function StockDialog({ shop, row, onClose }: Props) {
  const { sheet } = row;
  const act = useAct();
  const present = usePresent();
  const form = useRef<HTMLDivElement>(null);
  const [pieces, setPieces] = useState(NaN);
  const [note, setNote] = useState('');
  const [lot, setLot] = useState<Lot>({ lot: sheet.lot, paint: sheet.paint, film: sheet.film });
  const enter = (command: Command) =>
    void act(command).then(() => {
      setPieces(NaN);
      setNote('');
      // The pressed button is disabled now: without this the keyboard would stand nowhere.
      form.current?.querySelector('input')?.focus();
    }, toastError);
  const entry = { sheetId: sheet.id, at: present(), note };
  const whole = Number.isInteger(pieces);
  return (
    <Dialog title={stockName(shop, sheet)} isOpen onClose={onClose}>
      <div ref={form} className={styles.form}>
        <p>{standing(row)}</p>
        <NumberField
          label={sheet.form === 'coil' ? 'Coil lengths' : 'Pieces'}
          whole
          value={pieces}
          onChange={setPieces}
          help="to subtract, put a minus in front"
        />
        <LotFields
          knows={shop.settings.stockKnows}
          lot={lot}
          empty="not on record"
          onChange={(patch) => setLot({ ...lot, ...patch })}
        />
        <TextField label="Note" value={note} onChange={setNote} />
        <div className={styles.acts}>
          <Button
            look="primary"
            isDisabled={!whole || pieces < 1}
            onPress={() => enter({ do: 'stock.receive', ...entry, lot, pieces })}
          >
            Receive
          </Button>
          <Button
            isDisabled={!whole || pieces < 0}
            onPress={() => enter({ do: 'stock.count', ...entry, lot, pieces })}
          >
            Set count
          </Button>
          <Button
            isDisabled={!whole || pieces === 0}
            onPress={() => enter({ do: 'stock.correct', ...entry, by: pieces })}
          >
            Add or subtract
          </Button>
        </div>
        <Reserved shop={shop} row={row} />
      </div>
    </Dialog>
  );
}

/** "2 on hand, 10 expected, 5 reserved by the plan, 7 left." */
function standing(row: StockRow): string {
  const expected = expectedOf(row);
  const coming = expected > 0 ? `${expected} expected, ` : '';
  const rest = row.short > 0 ? `${row.short} short` : `${row.left} left`;
  return `${row.sheet.onHand} on hand, ${coming}${reservedOf(row)} reserved by the plan, ${rest}.`;
}

/** Day by day what the plan takes, what is left then, and for which runs. */
function Reserved({ shop, row }: { shop: Shop; row: StockRow }) {
  const { timeZone } = shop.settings;
  const days = takenByDay(row, timeZone);
  return (
    <>
      <h3>Expected, and reserved by the plan</h3>
      {days.length === 0 ? (
        <p className={styles.soft}>The plan uses none of it, and none is expected.</p>
      ) : (
        <table className={styles.days}>
          <thead>
            <tr>
              <ColumnHeads heads={['Day', 'Comes', 'Used', 'Then left', 'For runs']} />
            </tr>
          </thead>
          <tbody>
            {days.map(({ day, came, pieces, left, runs }) => (
              <tr key={day}>
                <td>{formatWallDate(day, timeZone)}</td>
                <td>{came || ''}</td>
                <td>{pieces}</td>
                <td>{left < 0 ? <Tag look="warn">{`${-left} short`}</Tag> : left}</td>
                <td>{runs.join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}
