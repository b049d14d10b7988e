import { cautionsFor } from '../../../core/report/cautions.ts';
import { CautionList } from '../../ui/caution-list.tsx';
import { Panel } from '../../ui/page.tsx';
import styles from './cutting.module.css';

/** The shear's cautions, wherever someone may go and cut. */
export function Cautioned() {
  return (
    <Panel title="Before the first cut">
      <div className={styles.cautions}>
        <CautionList cautions={cautionsFor('shear')} />
      </div>
    </Panel>
  );
}
