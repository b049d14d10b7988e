import { Search, Square } from 'lucide-react';
import { proofWords } from '../../../core/report/cut-proof.ts';
import type { RunCut } from '../../../core/report/cutting.ts';
import { Button } from '../../ui/button.tsx';
import { Tag } from '../../ui/tag.tsx';
import styles from './cutting.module.css';
import { useSolving } from './use-solving.ts';

/** How near the sheets are to the best there can be, and the work on it while it goes on. */
export function SolveBar({ cut }: { cut: RunCut }) {
  const { running, seconds, message, more, stop } = useSolving(cut);
  if (!cut.plan.ok) return null;
  const proven = cut.plan.value.status === 'optimal';
  return (
    <div className={styles.solving}>
      <Tag look={proven ? 'fine' : running ? 'accent' : 'plain'}>{proofWords(cut.plan.value)}</Tag>
      <span className={styles.soft} role="status">
        {running ? `Looking for better sheets: ${seconds.toFixed(0)} s` : (message ?? '')}
      </span>
      {running && (
        <Button small icon={Square} onPress={stop}>
          Stop
        </Button>
      )}
      {!running && !proven && cut.changed === null && (
        <Button small icon={Search} onPress={more}>
          Look longer
        </Button>
      )}
    </div>
  );
}
