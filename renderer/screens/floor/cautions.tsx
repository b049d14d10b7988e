import { cautionsFor, farCaution } from '../../../core/report/cautions.ts';
import type { Stage } from '../../../core/part/stage.ts';
import { CautionList } from '../../ui/caution-list.tsx';
import styles from './floor.module.css';

/** Always in sight while someone works from this screen. */
export function Cautions({ stage }: { stage: Stage }) {
  return (
    <aside className={styles.cautions} aria-label="Cautions">
      <p className={styles.farCaution} data-far>
        {farCaution(stage)}
      </p>
      <div className={styles.points} tabIndex={0}>
        <CautionList cautions={cautionsFor(stage)} />
      </div>
    </aside>
  );
}
