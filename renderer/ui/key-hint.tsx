import styles from './key-hint.module.css';

/** Keys as caps, "Ctrl+Shift+Z". */
export const KeyHint = ({ keys }: { keys: string }) => (
  <kbd className={styles.keys}>
    {keys.split(/(?<=.)\+/).map((key) => (
      <span key={key} className={styles.key}>
        {key}
      </span>
    ))}
  </kbd>
);
