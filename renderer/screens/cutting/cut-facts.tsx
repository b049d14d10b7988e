import { proofWords } from '../../../core/report/cut-proof.ts';
import type { RunCut } from '../../../core/report/cutting.ts';
import { figuresOfCut } from '../../../core/report/cutting-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatMoney } from '../../../core/units/money.ts';
import styles from './cutting.module.css';
import { percent } from './run-list.tsx';

/** A run in figures: the same on screen and on paper. */
export function CutFacts({ shop, cut }: { shop: Shop; cut: RunCut }) {
  if (!cut.plan.ok) return null;
  const plan = cut.plan.value;
  const { sheets, used, remnants, scrap, kept } = figuresOfCut(plan);
  const facts: [string, string][] = [
    ['Sheets', `${sheets} (${cut.sheetsAlone} if each line were cut by itself)`],
    ['Blanks', String(plan.steps.at(-1)?.blanksSoFar ?? 0)],
    ['Area used', percent(used)],
    ['Remnants kept', `${kept} (${percent(remnants)})`],
    ['Scrap and trim', percent(scrap)],
    ['Stock cost', `${formatMoney(plan.costCents)}, ${proofWords(plan)}`],
    ['Back gauge settings', String(plan.counts.backGaugeMoves)],
    ['Taken from stock', cut.takings.map((taking) => takenWords(shop, taking)).join(', ')],
  ];
  return (
    <dl className={styles.figures}>
      {facts.map(([term, value]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function takenWords(shop: Shop, { sheetId, pieces, short }: RunCut['takings'][number]): string {
  const form = shop.sheet.find((s) => s.id === sheetId)?.form;
  return `${pieces} of ${sheetId}${form === 'coil' ? ' (stretches)' : ''}${short > 0 ? `, ${short} short` : ''}`;
}
