import styles from './notes.module.css';

/** What was noted on a work order and on its line, each as it was typed: breaks are kept, whatever is long wraps. */
export const Notes = ({ notes }: { notes: readonly string[] }) => (
  <div className={styles.notes}>
    {notes.map((note, i) => (
      <p key={i}>{note}</p>
    ))}
  </div>
);
