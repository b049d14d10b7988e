import { boardKeys } from '../gantt/keys.ts';
import { floorKeys } from '../screens/floor/floor-keys.ts';
import { Dialog } from '../ui/dialog.tsx';
import { KeyHint } from '../ui/key-hint.tsx';
import type { Action } from './actions.ts';
import styles from './keys-dialog.module.css';

interface Row {
  readonly keys: string;
  readonly label: string;
}

const List = ({ title, rows }: { title: string; rows: readonly Row[] }) => (
  <section>
    <h3>{title}</h3>
    <dl className={styles.rows}>
      {rows.map(({ keys, label }) => (
        <div key={label} className={styles.row}>
          <dt>{label}</dt>
          <dd>
            <KeyHint keys={keys} />
          </dd>
        </div>
      ))}
    </dl>
  </section>
);

/** Everything the keyboard can do. */
export function KeysDialog({
  actions,
  isOpen,
  onClose,
}: {
  actions: readonly Action[];
  isOpen: boolean;
  onClose: () => void;
}) {
  const everywhere = actions.flatMap(({ keys, label }) => (keys ? [{ keys, label }] : []));
  return (
    <Dialog title="Keys" isOpen={isOpen} onClose={onClose} wide>
      <div className={styles.columns}>
        <List title="Everywhere" rows={everywhere} />
        <List title="On the board" rows={boardKeys} />
        <List title="On the floor" rows={floorKeys} />
      </div>
    </Dialog>
  );
}
