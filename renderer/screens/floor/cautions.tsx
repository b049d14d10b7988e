import { cautionsFor } from '../../../core/report/cautions.ts';
import type { Stage } from '../../../core/shop/machine.ts';
import styles from './floor.module.css';

/** Always in sight while someone works from this screen. */
export function Cautions({ stage }: { stage: Stage }) {
  const { governs, points } = cautionsFor(stage);
  return (
    <aside className={styles.cautions} aria-label="Cautions">
      <strong>{governs}</strong>
      <ul>
        {points.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
    </aside>
  );
}
