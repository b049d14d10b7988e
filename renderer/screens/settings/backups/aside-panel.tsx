import { useState } from 'react';
import { useAside, usePutBack, useRemoveAside, type RowAside } from '../../../queries/backups.ts';
import { Button } from '../../../ui/button.tsx';
import { Confirm } from '../../../ui/confirm.tsx';
import { SentenceError } from '../../../ui/states.tsx';
import { toast, toastError } from '../../../ui/toast.tsx';
import { saveText } from '../../stock/save-text.ts';
import styles from '../settings.module.css';
import { formatMoment } from './words.ts';

/** Rows that could not be read: which, why, and what they held. Nothing is shown while there are none. */
export function AsidePanel({ timeZone }: { timeZone: string }) {
  const { data, error } = useAside();
  if (error) return <SentenceError message={error.message} />;
  if (!data || data.length === 0) return null;
  return (
    <section className={styles.panel} aria-label="Set aside">
      <h2>Set aside</h2>
      <p className={styles.note}>
        These rows of the data file could not be read, or belong to one that could not. They are kept as they
        were found, outside the shop. A newer Foldweek may read them: try then to put them back. Else enter
        them again, or go back to a backup from before.
      </p>
      <ul className={styles.aside}>
        {data.map((row) => (
          <Row key={row.id} row={row} timeZone={timeZone} />
        ))}
      </ul>
    </section>
  );
}

function Row({ row, timeZone }: { row: RowAside; timeZone: string }) {
  const name = `${row.kind} ${row.rowId}`;
  return (
    <li>
      <details>
        <summary>{name}</summary>
        <p className={styles.note}>{`${formatMoment(row.at, timeZone)}: ${row.reason}`}</p>
        <p className={styles.path}>{row.content}</p>
        <Acts row={row} name={name} />
      </details>
    </li>
  );
}

function Acts({ row, name }: { row: RowAside; name: string }) {
  const putBack = usePutBack();
  const remove = useRemoveAside();
  const [asking, setAsking] = useState(false);
  const back = () =>
    putBack.mutate(row.id, {
      onSuccess: () => toast({ text: `${name} is back in the shop.` }),
      onError: toastError,
    });
  const gone = () =>
    remove.mutate(row.id, {
      onSuccess: () => toast({ text: `${name} is removed.` }),
      onError: toastError,
    });
  return (
    <p className={styles.asideActs}>
      <Button small onPress={back} aria-label={`Put ${name} back`}>
        Put back
      </Button>
      <Button
        small
        onPress={() => saveText(`${name}.json`, row.content, 'application/json')}
        aria-label={`Save ${name} as a file`}
      >
        Save as a file
      </Button>
      <Button small look="danger" onPress={() => setAsking(true)} aria-label={`Remove ${name} for good`}>
        Remove…
      </Button>
      <Confirm
        title={`Remove ${name} for good?`}
        message="What it held is gone then, and nothing brings it back. Save it as a file first if it may still be wanted."
        act="Remove for good"
        isOpen={asking}
        onConfirm={gone}
        onClose={() => setAsking(false)}
      />
    </p>
  );
}
