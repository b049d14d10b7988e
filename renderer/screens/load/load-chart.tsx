import {
  Bar,
  CartesianGrid,
  BarChart,
  LabelList,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { formatWallDate } from '../../../core/time/wall.ts';
import { formatDuration, HOUR } from '../../../core/units/duration.ts';
import { isOver, type MachineLoad } from './load-days.ts';
import styles from './load.module.css';

/** With a space that does not break: labels over narrow bars stay on one line. */
const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;

interface Day {
  readonly label: string;
  readonly work: number;
  readonly changeover: number;
  readonly capacity: number;
  /** Open hours that nothing is asked of; 0 where more is asked. */
  readonly spare: number;
  /** Over the bar and the open hours: utilisation, with a mark when the day is over. */
  readonly over: string;
}

/** Over more days than this there is no room for figures over the bars; the mark for too much stays. */
const LABELLED_DAYS = 14;

const dayOf =
  (timeZone: string, labelled: boolean) =>
  (day: MachineLoad['days'][number]): Day => ({
    label: formatWallDate(day.day, timeZone),
    work: day.work / HOUR,
    changeover: day.changeover / HOUR,
    capacity: day.capacity / HOUR,
    spare: Math.max(0, day.capacity - day.work - day.changeover) / HOUR,
    over: overBar(day, labelled),
  });

function overBar(day: MachineLoad['days'][number], labelled: boolean): string {
  const { utilisation, work, changeover } = day;
  const figure = utilisation === null ? 'closed' : percent(utilisation);
  if (isOver(day)) return labelled ? `▲\u00a0${figure}` : '▲';
  return labelled && work + changeover > 0 ? figure : '';
}

/** Work and changeover stacked against the open hours of each day. The table view says the same in figures. */
export function LoadChart({ load, timeZone }: { load: MachineLoad; timeZone: string }) {
  const days = load.days.map(dayOf(timeZone, load.days.length <= LABELLED_DAYS));
  const hatch = `hatch-${load.machine.id}`;
  const used =
    load.utilisation === null
      ? 'closed throughout'
      : `${percent(load.utilisation)} of the open hours are asked`;
  return (
    <figure
      className={styles.figure}
      aria-label={`Load of ${load.machine.name} by day: ${used}. The table view has the figures.`}
    >
      <Legend hatch={hatch} />
      <ResponsiveContainer width="100%" height={220}>
        <BarChart data={days} margin={{ top: 20, right: 12, bottom: 0, left: 0 }} barCategoryGap="22%">
          <defs>
            <HatchPattern id={hatch} />
          </defs>
          <CartesianGrid vertical={false} stroke="var(--rule)" />
          <XAxis
            dataKey="label"
            tick={{ fill: 'var(--ink-soft)', fontSize: 12 }}
            stroke="var(--rule-strong)"
            tickMargin={4}
          />
          <YAxis
            unit=" h"
            width={48}
            tick={{ fill: 'var(--ink-soft)', fontSize: 12 }}
            stroke="var(--rule-strong)"
          />
          <Tooltip
            content={DayWords}
            cursor={{ fill: 'var(--accent-soft)', opacity: 0.4 }}
            isAnimationActive={false}
          />
          <Bar dataKey="work" stackId="load" fill="var(--accent)" isAnimationActive={false} />
          <Bar
            dataKey="changeover"
            stackId="load"
            fill={`url(#${hatch})`}
            stroke="var(--hatch)"
            isAnimationActive={false}
          />
          {/* Not seen: it keeps the figures clear of the line of open hours. */}
          <Bar dataKey="spare" stackId="load" fill="none" minPointSize={1} isAnimationActive={false}>
            <LabelList dataKey="over" position="top" fill="var(--ink)" fontSize={12} />
          </Bar>
          <Bar xAxisId="open" dataKey="capacity" shape={OpenMark} isAnimationActive={false} />
        </BarChart>
      </ResponsiveContainer>
    </figure>
  );
}

/** The open hours of a day as a line across its bar. */
const OpenMark = ({ x, y, width, height }: { x?: number; y?: number; width?: number; height?: number }) => {
  if (x === undefined || y === undefined || width === undefined || !height) return null;
  return <line x1={x - 6} x2={x + width + 6} y1={y} y2={y} stroke="var(--ink)" strokeWidth={2.5} />;
};

const HatchPattern = ({ id }: { id: string }) => (
  <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
    <rect width="6" height="6" fill="var(--hatch-ground)" />
    <line x1="0" y1="0" x2="0" y2="6" stroke="var(--hatch)" strokeWidth="2.5" />
  </pattern>
);

const Legend = ({ hatch }: { hatch: string }) => (
  <ul className={styles.legend} aria-label="What is drawn">
    <li>
      <svg width="14" height="14" aria-hidden>
        <rect width="14" height="14" fill="var(--accent)" />
      </svg>
      work
    </li>
    <li>
      <svg width="14" height="14" aria-hidden>
        <rect width="14" height="14" fill={`url(#${hatch})`} stroke="var(--hatch)" />
      </svg>
      changeover
    </li>
    <li>
      <svg width="20" height="14" aria-hidden>
        <line x1="0" x2="20" y1="7" y2="7" stroke="var(--ink)" strokeWidth="2" />
      </svg>
      open hours
    </li>
    <li>▲ more than is open</li>
  </ul>
);

/** What the pointer is over, in words. */
function DayWords({ active, payload }: { active?: boolean; payload?: readonly { payload?: Day }[] }) {
  const day = payload?.[0]?.payload;
  if (!active || !day) return null;
  return (
    <div className={styles.tip}>
      <strong>{day.label}</strong>
      <span>{`${formatDuration(day.work * HOUR)} of work`}</span>
      <span>{`${formatDuration(day.changeover * HOUR)} of changeover`}</span>
      <span>{day.capacity > 0 ? `${formatDuration(day.capacity * HOUR)} open` : 'closed'}</span>
    </div>
  );
}
