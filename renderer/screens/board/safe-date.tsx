import { safeDateWords } from '../../../core/report/safe-date-words.ts';
import { useChances } from '../../queries/chances.ts';
import { ConfidenceChoice, useConfidence } from '../../ui/confidence-choice.tsx';
import styles from './board.module.css';

/** The date to promise for a line at a chosen confidence; nothing while too little work is finished. */
export function SafeDate({ lineId, timeZone }: { lineId: string; timeZone: string }) {
  const chances = useChances();
  const confidence = useConfidence();
  if (!chances?.[lineId]) return null;
  return (
    <section className={styles.part}>
      <h3>A date to promise</h3>
      <ConfidenceChoice />
      <p>{safeDateWords(chances, lineId, confidence, timeZone).words}</p>
    </section>
  );
}
