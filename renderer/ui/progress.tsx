import { Label, ProgressBar } from 'react-aria-components';
import styles from './progress.module.css';

/** How far along, from 0 to 1. */
export const Progress = ({ label, share }: { label: string; share: number }) => (
  <ProgressBar value={share * 100} className={styles.progress ?? ''}>
    {({ percentage = 0 }) => (
      <>
        <Label className={styles.label ?? ''}>{label}</Label>
        <div className={styles.track}>
          <div className={styles.done} style={{ width: `${percentage}%` }} />
        </div>
      </>
    )}
  </ProgressBar>
);
