import { Pencil, X } from 'lucide-react';
import { IconButton } from '../ui/icon-button.tsx';
import { toastError } from '../ui/toast.tsx';
import styles from './form.module.css';
import { useAct } from './use-act.ts';

interface Props {
  kind: 'downtime' | 'absence';
  row: { readonly id: string; readonly revision: number; readonly to: number; readonly reason: string };
  /** What is missing and when. */
  words: string;
  /** What the buttons call it. */
  name: string;
  now: number;
  onChange: () => void;
}

/** A machine or people that are out for some hours: changed in a dialog, removed at once. */
export function OutageRow({ kind, row, words, name, now, onChange }: Props) {
  const act = useAct();
  const remove = () =>
    void act({ do: 'row.remove', kind, id: row.id, revision: row.revision }).catch(toastError);
  return (
    <li>
      <span>{words}</span>
      <span className={styles.note}>{row.to <= now ? `${row.reason} (past)` : row.reason}</span>
      <span className={styles.push}>
        <IconButton label={`Change ${name}`} icon={Pencil} small onPress={onChange} />
        <IconButton label={`Remove ${name}`} icon={X} small onPress={remove} />
      </span>
    </li>
  );
}
