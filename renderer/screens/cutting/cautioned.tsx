import { cautionsFor } from '../../../core/report/cautions.ts';
import { Panel } from '../../ui/page.tsx';
import styles from './cutting.module.css';

/** The shear's cautions, wherever someone may go and cut. */
export function Cautioned() {
  const { governs, points } = cautionsFor('shear');
  return (
    <Panel title="Before the first cut">
      <div className={styles.cautions}>
        <strong>{governs}</strong>
        <ul>
          {points.map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ul>
      </div>
    </Panel>
  );
}
