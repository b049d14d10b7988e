import { proofWords } from '../../../core/report/cut-proof.ts';
import { isTaken, stockUsed, type RunCut } from '../../../core/planning/cut-run.ts';
import {
  figuresOfCut,
  leastMetalWords,
  remnantWords,
  shearWords,
} from '../../../core/report/cutting-words.ts';
import { settingsOf } from '../../../core/cutting/work.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { counted } from '../../../core/units/count.ts';
import { formatMoney } from '../../../core/units/money.ts';
import styles from './cutting.module.css';
import { formatPercent } from '../../../core/units/number.ts';

/** A run in figures: the same on screen and on paper. */
export function CutFacts({ shop, cut }: { shop: Shop; cut: RunCut }) {
  if (!cut.plan.ok) return null;
  const plan = cut.plan.value;
  const { sheets, used, remnants, scrap, left, kept } = figuresOfCut(plan);
  const percent = (share: number) => formatPercent(share, shop.settings);
  const cost = formatMoney(plan.costCents, shop.settings);
  // Neither sheets that are taken nor a list that misses blanks can be held against the least there can be.
  const judged = !isTaken(cut) && cut.faults.length === 0;
  const facts: [string, string][] = [
    ['Sheets', `${sheets} (${cut.sheetsAlone} if each line were cut by itself)`],
    ['Blanks', String(plan.steps.at(-1)?.blanksSoFar ?? 0)],
    ['Yield', percent(used)],
    ['Remnants kept', `${kept} (${percent(remnants)})`],
    ['Scrap and trim', percent(scrap)],
    ...(left > 0 ? [['Left uncut', percent(left)] satisfies [string, string]] : []),
    ['Stock cost', judged ? `${cost}, ${proofWords(plan, shop.settings)}` : cost],
    ['Settings', `${settingsOf(plan.steps)} in ${counted(plan.steps.length, 'step')}`],
    [
      'Stock',
      stockUsed(shop, plan.groups)
        .map((used) => usedWords(shop, cut, used))
        .join(', '),
    ],
  ];
  const notes = [
    `${cut.run.machine.name}: ${shearWords(cut.input)}.`,
    remnantWords(plan.remnants, shop.settings),
    judged ? leastMetalWords(plan, shop.settings) : null,
  ].filter((note) => note !== null);
  return (
    <>
      <dl className={styles.figures}>
        {facts.map(([term, value]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {notes.map((note) => (
        <p key={note} className={styles.padded}>
          {note}
        </p>
      ))}
    </>
  );
}

type Used = ReturnType<typeof stockUsed>[number];

/** "10 of galv-24-slate-48x120, 3 short" */
function usedWords(shop: Shop, { takings }: RunCut, { sheetId, pieces }: Used): string {
  const form = shop.sheet.find((s) => s.id === sheetId)?.form;
  const short = takings.find((taking) => taking.sheetId === sheetId)?.short ?? 0;
  return `${pieces} of ${sheetId}${form === 'coil' ? ' (coil lengths)' : ''}${short > 0 ? `, ${short} short` : ''}`;
}
