import { cautionsFor, pageFoot } from '../../../core/report/cautions.ts';
import type { DispatchList, DispatchRun } from '../../../core/report/dispatch.ts';
import type { ChangedRow } from '../../../core/report/plan-words.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import { addDays, formatDayAndClock, formatWallDate } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { CautionList } from '../../ui/caution-list.tsx';
import { ChangedList } from '../plans/changed-list.tsx';
import { PaperRow } from './paper-row.tsx';
import { changeoverWords, COLUMNS, when } from './paper-words.ts';
import styles from './print.module.css';

/** What a list says of the plan it follows. */
export interface PublishedList {
  /** "Plan published Mon 30 Nov 07:10: for the night" */
  readonly title: string;
  /** What it changed for this machine. */
  readonly changes: readonly ChangedRow[];
  /** When the one before it was published; null: there was none. */
  readonly since: Instant | null;
}

interface Props {
  list: DispatchList;
  settings: Settings;
  now: Instant;
  days: number;
  /** Null where every change is published at once. */
  published: PublishedList | null;
}

/** Changes of the plan that paper names; where there are more, the whole list wants to be read. */
const NAMED = 24;

/** One machine's list; it begins on a page of its own, head and foot come again on each. */
export function Paper(props: Props) {
  const {
    list: { machine, runs },
    settings,
    days,
    published,
  } = props;
  const cautions = cautionsFor(machine.stage);
  return (
    <section
      className={settings.units === 'in' ? styles.letter : styles.a4}
      aria-label={`Dispatch list of ${machine.name}`}
    >
      <table className={styles.paper}>
        <thead>
          <Head {...props} />
          <ColumnHeads blank={machine.stage === 'shear'} />
        </thead>
        <tfoot>
          <tr>
            <td colSpan={COLUMNS} className={styles.foot}>
              {pageFoot(machine.name, cautions)}
            </td>
          </tr>
        </tfoot>
        <tbody>
          <tr>
            <td colSpan={COLUMNS}>
              <div className={styles.cautions}>
                <CautionList cautions={cautions} />
              </div>
            </td>
          </tr>
          {published && <Changed published={published} list={props.list} settings={settings} />}
          {runs.length === 0 && (
            <tr>
              <td colSpan={COLUMNS}>{`Nothing is planned on ${machine.name} in these days.`}</td>
            </tr>
          )}
        </tbody>
        {runs.map((run) => (
          <Run
            key={run.rows[0]?.operationId}
            run={run}
            stage={machine.stage}
            settings={settings}
            withDate={days > 6}
          />
        ))}
      </table>
    </section>
  );
}

/** What the plan that the list follows changed for this machine. */
function Changed({
  published: { changes, since },
  list: { machine },
  settings,
}: Pick<Props, 'list' | 'settings'> & { published: PublishedList }) {
  if (since === null || changes.length === 0) return null;
  return (
    <tr>
      <td colSpan={COLUMNS}>
        <section className={styles.changed} aria-label={`Changed on ${machine.name}`}>
          <strong>{`Changed since the plan of ${formatDayAndClock(since, settings.timeZone)}:`}</strong>
          <ChangedList rows={changes} named={NAMED} />
        </section>
      </td>
    </tr>
  );
}

/** Which machine, which days, and when it was printed: an older list is known by it. */
function Head({ list: { machine }, settings, now, days, published }: Props) {
  const { timeZone } = settings;
  const last = addDays(now, days - 1, timeZone);
  const period =
    days === 1
      ? formatWallDate(now, timeZone)
      : `${formatWallDate(now, timeZone)} to ${formatWallDate(last, timeZone)}`;
  return (
    <tr>
      <td colSpan={COLUMNS}>
        <div className={styles.head}>
          <h1>{`${machine.name} (${machine.id})`}</h1>
          <span>{period}</span>
          <span>{`${settings.name}, printed ${formatDayAndClock(now, timeZone)}`}</span>
        </div>
        {published && <p className={styles.published}>{published.title}</p>}
      </td>
    </tr>
  );
}

const ColumnHeads = ({ blank }: { blank: boolean }) => (
  <tr className={styles.columns}>
    <th scope="col">No.</th>
    <th scope="col">Start, end</th>
    <th scope="col">Line, customer</th>
    <th scope="col">Part</th>
    <th scope="col">Pieces</th>
    <th scope="col">{blank ? 'Girth × length' : 'Profile, length'}</th>
    <th scope="col">Due</th>
    <th scope="col">Then to</th>
    <th scope="col">Done, good, scrap</th>
  </tr>
);

interface RunProps {
  run: DispatchRun;
  stage: DispatchList['machine']['stage'];
  settings: Settings;
  withDate: boolean;
}

function Run({ run, stage, settings, withDate }: RunProps) {
  const { changeover } = run;
  return (
    <tbody>
      {changeover && (
        <tr className={styles.changeover}>
          <td colSpan={COLUMNS}>
            {`${when(changeover.start, settings.timeZone, withDate)}  ${changeoverWords(changeover.seconds, changeover.steps, changeover.firstPiece)}`}
          </td>
        </tr>
      )}
      <tr className={styles.run}>
        <th colSpan={COLUMNS} scope="rowgroup">
          {run.title}
          {run.tools.length > 0 && ` · Set up: ${run.tools.join('; then ')}`}
        </th>
      </tr>
      {run.rows.map((row) => (
        <PaperRow key={row.operationId} row={row} stage={stage} settings={settings} withDate={withDate} />
      ))}
    </tbody>
  );
}
