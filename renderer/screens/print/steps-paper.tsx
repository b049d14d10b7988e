import type { CutPlan } from '../../../core/cutting/plan.ts';
import { cautionsFor, pageFoot } from '../../../core/report/cautions.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { stepRows, type StepRow } from '../../../core/report/cutting-words.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { CautionList } from '../../ui/caution-list.tsx';
import { CutFacts } from '../cutting/cut-facts.tsx';
import { Sheets } from '../cutting/sheets.tsx';
import styles from './print.module.css';
import stock from './stock-paper.module.css';
import { ColumnHeads } from '../../ui/column-heads.tsx';

interface Props {
  shop: Shop;
  cut: RunCut;
  plan: CutPlan;
  now: Instant;
}

const HEADS = [
  'No.',
  'Feed',
  'Back gauge',
  'Cut',
  'Each',
  'Stroke',
  'Gives',
  'Rest',
  'For lines',
  'Blanks',
  'So far',
  'Done',
];

/** What the person at the shear takes along: cautions, figures, sheets, and the steps to tick off. */
export function StepsPaper({ shop, cut, plan, now }: Props) {
  const { run } = cut;
  const { units } = shop.settings;
  const cautions = cautionsFor('shear');
  return (
    <section
      className={`${units === 'in' ? styles.letter : styles.a4} ${stock.paper}`}
      aria-label={`Steps of run ${run.id}`}
    >
      <table className={stock.pages}>
        <tfoot>
          <tr>
            <td className={styles.foot}>{pageFoot(run.machine.name, cautions)}</td>
          </tr>
        </tfoot>
        <tbody>
          <tr>
            <td>
              <Head shop={shop} cut={cut} now={now} />
              <CutFacts shop={shop} cut={cut} />
            </td>
          </tr>
          <tr>
            <td>
              <StepTable rows={stepRows(plan.steps, units)} />
            </td>
          </tr>
          <tr>
            <td>
              <Sheets shop={shop} cut={cut} />
            </td>
          </tr>
        </tbody>
      </table>
    </section>
  );
}

/** Which run, by when, what to mind, and what is wrong with a changed list. */
function Head({ shop, cut: { run, faults }, now }: Omit<Props, 'plan'>) {
  const { timeZone, name } = shop.settings;
  const when = (at: Instant): string => formatDayAndClock(at, timeZone);
  return (
    <>
      <div className={styles.head}>
        <h1>{`Run ${run.id}: ${metalName(shop, run)}`}</h1>
        <span>{`${run.machine.name}, starts ${when(run.start)}`}</span>
        <span>{`${name}, printed ${when(now)}`}</span>
      </div>
      <div className={styles.cautions}>
        <CautionList cautions={cautionsFor('shear')} />
      </div>
      {faults.length > 0 && (
        <p
          className={stock.fault}
        >{`This list was changed and does not give what the run asks: ${faults.map((p) => p.message).join(' ')}`}</p>
      )}
    </>
  );
}

const StepTable = ({ rows }: { rows: readonly StepRow[] }) => (
  <table className={`${styles.paper} ${stock.table}`}>
    <thead>
      <tr className={styles.columns}>
        <ColumnHeads heads={HEADS} />
      </tr>
    </thead>
    <tbody>
      {rows.map((row) => (
        <tr key={row.number} className={styles.row}>
          <td className={styles.place}>{row.number}</td>
          <td>{row.feed}</td>
          <td>
            <strong>{row.setting}</strong>
          </td>
          <td>{row.cut}</td>
          <td>{row.cutsEach}</td>
          <td>{row.stroke}</td>
          <td>{row.gives}</td>
          <td>{row.rest}</td>
          <td>{row.lines}</td>
          <td>{row.blanks}</td>
          <td>{row.blanksSoFar}</td>
          <td>
            <span className={styles.tick} />
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);
