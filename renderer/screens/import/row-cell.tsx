import { useRef, useState, type KeyboardEvent } from 'react';
import type { RowReading } from '../../../core/import/reading.ts';
import { classes } from '../../ui/classes.ts';
import styles from './import.module.css';
import { underCell } from './rows-view.ts';

interface Props {
  id: string;
  role: string;
  className: string;
  field: string;
  row: RowReading;
  /** What says why the row cannot be taken. */
  reasonsId: string;
  editing: boolean;
  onPick: (edit: boolean) => void;
  /** @param text as it was typed; null: it stays as it was */
  onDone: (text: string | null) => void;
}

/** A cell as it is understood, beneath it the file's own text or what stands in the shop. Typed again in place. */
export function RowCell({ field, row, reasonsId, editing, onPick, onDone, className, ...rest }: Props) {
  const cell = row.cells.find((one) => one.field === field);
  const isBad = cell?.issue !== undefined;
  const waits = !isBad && cell !== undefined && cell.text !== '' && cell.read === '';
  const look = classes(className, isBad && styles.bad, waits && styles.waits);
  if (editing)
    return (
      <div {...rest} className={look}>
        <CellInput
          label={`${field}, row ${row.row}`}
          text={cell?.text ?? ''}
          describedBy={isBad ? reasonsId : undefined}
          onDone={onDone}
        />
      </div>
    );
  const under = cell ? underCell(cell) : '';
  return (
    <div {...rest} className={look} onClick={() => onPick(isBad)} onDoubleClick={() => onPick(true)}>
      <span>{cell && (cell.read === '' ? cell.text : cell.read)}</span>
      {under !== '' && <small>{under}</small>}
    </div>
  );
}

interface InputProps {
  label: string;
  text: string;
  describedBy: string | undefined;
  onDone: (text: string | null) => void;
}

/** Enter and leaving it keep what was typed, Escape does not. */
function CellInput({ label, text: before, describedBy, onDone }: InputProps) {
  const [text, setText] = useState(before);
  // The keyboard leaves the field with the key that ends it: it is done with once.
  const isDone = useRef(false);
  const done = (typed: string | null) => {
    if (isDone.current) return;
    isDone.current = true;
    onDone(typed);
  };
  const keep = () => done(text === before ? null : text);
  const keys = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === 'Enter') keep();
    if (event.key === 'Escape') done(null);
  };
  return (
    <input
      autoFocus
      className={styles.editor}
      aria-label={label}
      aria-invalid={describedBy !== undefined}
      aria-describedby={describedBy}
      value={text}
      onChange={(event) => setText(event.target.value)}
      onKeyDown={keys}
      onBlur={keep}
    />
  );
}
