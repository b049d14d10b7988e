import { useState } from 'react';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { stockFor } from '../../../core/planning/run-stock.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatCutSize } from '../../../core/units/length.ts';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/choice.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import styles from './cutting.module.css';
import type { StepEdit } from './use-steps.ts';

/** More sheets laid ready for a list: a kind of their own, for steps that are added then. */
export function AddSheets({
  shop,
  cut,
  edit,
  onClose,
}: {
  shop: Shop;
  cut: RunCut;
  edit: StepEdit;
  onClose: () => void;
}) {
  const stock = stockFor(shop, cut.run).filter(({ form }) => form !== 'coil');
  const [sheetId, setSheet] = useState(stock[0]?.id ?? '');
  const [count, setCount] = useState(1);
  const sheet = stock.find(({ id }) => id === sheetId);
  const add = () => {
    if (!sheet) return;
    edit.addSheets(sheet, count);
    onClose();
  };
  return (
    <Dialog
      title="Add sheets"
      isOpen
      onClose={onClose}
      actions={
        <Button look="primary" isDisabled={!sheet || !(count >= 1)} onPress={add}>
          Add
        </Button>
      }
    >
      <div className={styles.form}>
        <Select
          label="Stock"
          options={stock.map(({ id, widthMm, lengthMm, onHand }) => ({
            id,
            name: `${id}, ${formatCutSize(widthMm, lengthMm, shop.settings)}, ${onHand} on hand`,
          }))}
          value={sheetId}
          onChange={setSheet}
        />
        <NumberField label="Sheets" whole min={1} max={10_000} value={count} onChange={setCount} />
        <p className={styles.soft}>They are taken from stock once a step cuts them.</p>
      </div>
    </Dialog>
  );
}
