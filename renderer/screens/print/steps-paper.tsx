import type { CutPlan } from '../../../core/cutting/plan.ts';
import { cautionsFor, pageFoot } from '../../../core/report/cautions.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { paperSteps, type PaperStep, type PaperStretch } from '../../../core/report/step-paper.ts';
import { runMetal } from '../../../core/report/cutting-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import type { LengthUnits } from '../../../core/units/length.ts';
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
  /** With the sheets drawn, after the steps. */
  drawings: boolean;
}

/** "in" and "mm" stand here once: the rows have bare figures. */
const headsIn = (units: LengthUnits): string[] => [
  'No.',
  'Feed',
  `Set, ${units}`,
  '×',
  'Drop',
  'For lines',
  'Held',
  'Sum',
  '',
];

/** Of the columns, in percent: a step stands on one line where it can. */
const WIDTHS = [6, 8.5, 18, 4.5, 13, 24.5, 15, 7, 3.5];

const SETS = { length: 'Crosscut', width: 'Rip' } as const;

/** What the short words of the rows stand for. */
const LEGEND =
  '×: cuts on each piece. Drop: what falls behind the blade, loose; × is a blank, so long or wide. Held: what the hold-downs grip in front of it after the last cut, back on its stack unless something else is said; × is a blank, as long or wide as the drop where no figure follows. For lines: a line without a number gets one blank. Sum: blanks so far.';

/**
 * What the person at the shear takes along: cautions, figures, the steps to tick off in two columns, so that the list of two
 * hundred blanks is two pages, and where it is wanted the sheets drawn.
 */
export function StepsPaper({ shop, cut, plan, now, drawings }: Props) {
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
            <td className={`${styles.foot} ${stock.foot}`}>{pageFoot(run.machine.name, cautions)}</td>
          </tr>
        </tfoot>
        <tbody>
          <tr>
            <td>
              <Head shop={shop} cut={cut} now={now} />
              <div className={stock.facts}>
                <CutFacts shop={shop} cut={cut} />
              </div>
            </td>
          </tr>
          <tr>
            <td>
              <p className={stock.legend}>{LEGEND}</p>
              <div className={stock.columns}>
                <StepTable stretches={paperSteps(plan, cut.input)} units={units} />
              </div>
            </td>
          </tr>
          {drawings && (
            <tr>
              <td>
                <Sheets shop={shop} cut={cut} />
              </td>
            </tr>
          )}
        </tbody>
      </table>
    </section>
  );
}

/** Which run, by when, what to mind, and what is wrong with a changed list. */
function Head({ shop, cut: { run, faults }, now }: Pick<Props, 'shop' | 'cut' | 'now'>) {
  const { timeZone, name } = shop.settings;
  const when = (at: Instant): string => formatDayAndClock(at, timeZone);
  return (
    <>
      <div className={styles.head}>
        <h1>{`Run ${run.id}: ${runMetal(shop, run)}`}</h1>
        <span>{`${run.machine.name}, starts ${when(run.start)}`}</span>
        <span>{`${name}, printed ${when(now)}`}</span>
      </div>
      <div className={`${styles.cautions} ${stock.cautions}`}>
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

const StepTable = ({ stretches, units }: { stretches: readonly PaperStretch[]; units: LengthUnits }) => (
  <table className={stock.steps}>
    <colgroup>
      {WIDTHS.map((width, column) => (
        <col key={column} style={{ width: `${width}%` }} />
      ))}
    </colgroup>
    <thead>
      <tr className={`${styles.columns} ${stock.heads}`}>
        <ColumnHeads heads={headsIn(units)} />
      </tr>
    </thead>
    {stretches.map(({ axis, heading, steps }) => (
      <tbody key={steps[0]?.number}>
        <tr className={stock.stretch}>
          <th colSpan={9}>{heading === null ? SETS[axis] : `${heading}: ${SETS[axis]}`}</th>
        </tr>
        {steps.map((row) => (
          <StepRow key={row.number} row={row} />
        ))}
      </tbody>
    ))}
  </table>
);

const StepRow = ({ row }: { row: PaperStep }) => (
  <tr className={styles.row}>
    <td className={styles.place}>{row.number}</td>
    <td>{row.feed}</td>
    <td>
      <strong>{row.setting}</strong>
    </td>
    <td>{row.cuts}</td>
    <td>{row.drop}</td>
    <td>{row.lines}</td>
    <td>{row.held}</td>
    <td>{row.blanksSoFar}</td>
    <td>
      <span className={stock.box} />
    </td>
  </tr>
);
