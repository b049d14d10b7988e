import type { LateChange } from '../../../core/learn/evidence.ts';
import { sentence, type Result } from '../../../core/result.ts';
import styles from './learning.module.css';
import { formatPercent, type Decimals } from '../../../core/units/number.ts';

/** What learning would have brought on work it had not seen, in words. */
export function lateWords({ learnedFrom, foretold, before, after }: LateChange, style: Decimals): string {
  const tried = `Learned from the first ${learnedFrom} operations and checked on the ${foretold} after them`;
  const [old, next] = [formatPercent(before, style), formatPercent(after, style)];
  if (old === next) return `${tried}, estimates are usually off by ${old}, as they are now.`;
  return after < before
    ? `${tried}, estimates are usually off by ${next} instead of ${old}.`
    : `${tried}, estimates are usually off by ${next}, which is more than the ${old} now: the work has changed.`;
}

export const LateSentence = ({ late, style }: { late: Result<LateChange>; style: Decimals }) => (
  <p className={styles.lead}>{late.ok ? lateWords(late.value, style) : sentence(late.issues)}</p>
);
