import type { LateChange } from '../../../core/learn/evidence.ts';
import { sentence, type Result } from '../../../core/result.ts';
import styles from './learning.module.css';

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

/** What learning would have brought on work it had not seen, in words. */
export function lateWords({ learnedFrom, foretold, before, after }: LateChange): string {
  const tried = `Learned from the first ${learnedFrom} operations and checked on the ${foretold} after them`;
  const [old, next] = [percent(before), percent(after)];
  if (old === next) return `${tried}, estimates are usually off by ${old}, as they are now.`;
  return after < before
    ? `${tried}, estimates are usually off by ${next} instead of ${old}.`
    : `${tried}, estimates are usually off by ${next}, which is more than the ${old} now: the work has changed.`;
}

export const LateSentence = ({ late }: { late: Result<LateChange> }) => (
  <p className={styles.lead}>{late.ok ? lateWords(late.value) : sentence(late.issues)}</p>
);
