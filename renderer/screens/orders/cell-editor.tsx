import { useState, type KeyboardEvent } from 'react';
import { sentence } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useAct } from '../../form/use-act.ts';
import { usePresent } from '../../queries/hooks.ts';
import { cellName, cellText, changeCell } from './cell-change.ts';
import type { Editable } from './line-columns.tsx';
import type { LineRow } from './line-rows.ts';
import styles from './orders.module.css';

interface Props {
  shop: Shop;
  row: LineRow;
  what: Editable;
  /** The cell is done with, saved or given up. */
  onDone: () => void;
}

/** One value typed in place: Enter saves, Escape leaves it as it was. A refusal stays beside it with what was typed. */
export function CellEditor({ shop, row, what, onDone }: Props) {
  const [text, setText] = useState(() => cellText(row, what, shop.settings.timeZone));
  const [refusal, setRefusal] = useState<string | null>(null);
  const act = useAct();
  const present = usePresent();
  const save = async (typed: string) => {
    const change = changeCell(shop, row, what, typed, present());
    if (!change.ok) return setRefusal(sentence(change.issues));
    if (change.value === null) return onDone();
    try {
      await act(change.value);
      onDone();
    } catch (error) {
      setRefusal((error as Error).message);
    }
  };
  const keys = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === 'Enter') void save(text);
    if (event.key === 'Escape') onDone();
  };
  const shared = {
    'aria-label': `${cellName(row, what)}, line ${row.id}`,
    'aria-invalid': refusal !== null,
    autoFocus: true,
    className: styles.editor,
    onKeyDown: keys,
  };
  return (
    <span className={styles.editing}>
      {what === 'status' ? (
        <select {...shared} value={text} onChange={(event) => void save(event.target.value)} onBlur={onDone}>
          <option value="open">open</option>
          <option value="done">done</option>
          <option value="cancelled">cancelled</option>
        </select>
      ) : (
        <input
          {...shared}
          type={what === 'due' ? 'datetime-local' : 'text'}
          inputMode={what === 'quantity' ? 'numeric' : undefined}
          value={text}
          onChange={(event) => setText(event.target.value)}
          onBlur={() => refusal === null && void save(text)}
        />
      )}
      {refusal !== null && (
        <span className={styles.refusal} role="alert">
          {refusal}
        </span>
      )}
    </span>
  );
}
