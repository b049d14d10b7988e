import { useAside, type RowAside } from '../../../queries/backups.ts';
import { SentenceError } from '../../../ui/states.tsx';
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
        were found, outside the shop. Enter them again, or go back to a backup from before.
      </p>
      <ul className={styles.aside}>
        {data.map((row) => (
          <Row key={row.id} row={row} timeZone={timeZone} />
        ))}
      </ul>
    </section>
  );
}

const Row = ({ row, timeZone }: { row: RowAside; timeZone: string }) => (
  <li>
    <details>
      <summary>{`${row.kind} ${row.rowId}`}</summary>
      <p className={styles.note}>{`${formatMoment(row.at, timeZone)}: ${row.reason}`}</p>
      <p className={styles.path}>{row.content}</p>
    </details>
  </li>
);
