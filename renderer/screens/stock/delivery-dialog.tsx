import { useState } from 'react';
import { stockName } from '../../../core/edit/stock-commands.ts';
import type { Lot } from '../../../core/material/lot.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Delivery } from '../../../core/shop/stock.ts';
import { Conflicts } from '../../form/conflicts.tsx';
import { LotFields } from '../../form/lot-fields.tsx';
import { orNull } from '../../form/span-fields.tsx';
import { useAct } from '../../form/use-act.ts';
import { useForm } from '../../form/use-form.ts';
import { usePresent } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { DateTimeField } from '../../ui/date-time-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SentenceError } from '../../ui/states.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { toastError } from '../../ui/toast.tsx';
import { askLateMetal } from '../what-if/what-if-view.ts';
import {
  deliverable,
  deliveryEntries,
  entriesOf,
  freshDelivery,
  saveDelivery,
  type DeliveryEntries,
} from './delivery-entries.ts';
import styles from './stock.module.css';

interface Props {
  shop: Shop;
  /** null: a new one. */
  row: Delivery | null;
  onClose: () => void;
}

/** A delivery: what of, how many, when, and what the supplier said; one that is on record can be received and removed. */
export function DeliveryDialog({ shop, row, onClose }: Props) {
  const [current] = useState(() => (row ? entriesOf(shop, row) : freshDelivery(shop)));
  const form = useForm<DeliveryEntries>({
    name: `delivery ${row?.id ?? 'new'}`,
    shop,
    current,
    schema: deliveryEntries,
    command: saveDelivery(shop),
    fieldOf: ({ field }) => (field === 'stock' ? 'sheetId' : ''),
    rebase: (entries, [conflict]) => ({
      ...entries,
      revision: (conflict?.theirs as Delivery | null)?.revision ?? 0,
    }),
  });
  const saveAndClose = async () => {
    if (await form.save()) onClose();
  };
  const remove = async ({ id, revision }: Delivery) => {
    if (await form.remove({ do: 'row.remove', kind: 'delivery', id, revision })) onClose();
  };
  const later = ({ id }: Delivery) => {
    onClose();
    askLateMetal(id);
  };
  return (
    <Dialog
      title={row ? `Delivery ${row.id}` : 'Expect a delivery'}
      isOpen
      onClose={onClose}
      actions={
        <>
          {row && <Button onPress={() => void remove(row)}>Remove</Button>}
          {row && <Button onPress={() => later(row)}>Comes later…</Button>}
          <Button onPress={onClose}>Close</Button>
          <Button
            look={row ? 'usual' : 'primary'}
            onPress={() => void saveAndClose()}
            isDisabled={!form.changed}
          >
            Save
          </Button>
        </>
      }
    >
      {form.errors[''] && <SentenceError message={form.errors['']} />}
      <Conflicts form={form} />
      {row && <Receive key={row.revision} shop={shop} row={row} onClose={onClose} />}
      <Fields shop={shop} form={form} />
    </Dialog>
  );
}

/** What was ordered, and when it comes. */
function Fields({ shop, form }: { shop: Shop; form: ReturnType<typeof useForm<DeliveryEntries>> }) {
  const { entries, errors, set } = form;
  const stock = deliverable(shop);
  const options = stock.map((sheet) => ({ id: sheet.id, name: stockName(shop, sheet) }));
  const choose = (sheetId: string): void => {
    const { lot, paint, film } = stock.find(({ id }) => id === sheetId) ?? entries;
    set({ sheetId, lot, paint, film });
  };
  return (
    <div className={styles.form}>
      <Select
        label="Stock"
        placeholder="Choose a sheet size"
        options={options}
        value={entries.sheetId || null}
        onChange={choose}
        error={errors.sheetId && 'Choose what was ordered.'}
      />
      <LotFields
        knows={shop.settings.stockKnows}
        lot={entries}
        empty="not known yet"
        onChange={set}
        error={(field) => errors[field]}
      />
      <NumberField
        label="Pieces expected"
        whole
        value={entries.pieces}
        onChange={(pieces) => set({ pieces })}
        error={errors.pieces}
      />
      <DateTimeField
        label="Expected"
        timeZone={shop.settings.timeZone}
        usualClock="07:00"
        value={orNull(entries.due)}
        onChange={(due) => set({ due: due ?? NaN })}
        error={errors.due && 'Needs a date.'}
      />
      <TextField
        label="Supplier’s note"
        value={entries.note}
        onChange={(note) => set({ note })}
        error={errors.note}
      />
    </div>
  );
}

/** It came: all of it unless another figure is typed; a rest stays expected. */
function Receive({ shop, row, onClose }: { shop: Shop; row: Delivery; onClose: () => void }) {
  const act = useAct();
  const present = usePresent();
  const [pieces, setPieces] = useState(row.pieces);
  const [lot, setLot] = useState<Lot>(() => {
    const { lot: name, paint, film } = entriesOf(shop, row);
    return { lot: name, paint, film };
  });
  const receive = () =>
    void act({
      ...{ do: 'stock.receive', sheetId: row.sheetId, deliveryId: row.id, lot, pieces },
      ...{ at: present(), note: row.note },
    }).then(onClose, toastError);
  const isWhole = Number.isInteger(pieces) && pieces >= 1;
  return (
    <section className={styles.receive} aria-label="Receive">
      <NumberField
        label="Pieces that came"
        whole
        value={pieces}
        onChange={setPieces}
        help={
          isWhole && pieces < row.pieces
            ? `${row.pieces - pieces} stay expected`
            : `of ${row.pieces} expected`
        }
      />
      <LotFields
        knows={shop.settings.stockKnows}
        lot={lot}
        empty="not on record"
        onChange={(patch) => setLot({ ...lot, ...patch })}
      />
      <Button look="primary" isDisabled={!isWhole} onPress={receive}>
        Receive
      </Button>
    </section>
  );
}
