import { useMemo } from 'react';
import {
  CartesianGrid,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  ScatterChart,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { evidenceOf, type Evidence } from '../../../core/learn/evidence.ts';
import type { Observation } from '../../../core/learn/observation.ts';
import type { Proposal } from '../../../core/learn/propose.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import { formatDuration, HOUR } from '../../../core/units/duration.ts';
import styles from './learning.module.css';

/** More points than this hide each other. */
const SHOWN = 250;

interface Point {
  readonly id: string;
  readonly minutes: number;
  readonly actual: number;
}

const pointsOf = (evidence: readonly Evidence[], by: 'present' | 'proposed'): Point[] =>
  evidence.map((e) => ({ id: e.id, minutes: e[by] / 60, actual: e.actual / 60 }));

interface Props {
  machine: Machine;
  observations: readonly Observation[];
  proposals: readonly Proposal[];
}

/** Each finished operation as a point: estimated minutes across, taken minutes up; on the line they agree. */
export function EvidenceChart({ machine, observations, proposals }: Props) {
  const evidence = useMemo(() => {
    const found = evidenceOf(machine, observations, proposals);
    return found.ok ? found.value.slice(-SHOWN) : [];
  }, [machine, observations, proposals]);
  if (evidence.length === 0) return null;
  const longest = evidence.reduce((top, e) => Math.max(top, e.actual, e.present, e.proposed), 0);
  const most = Math.ceil(longest / HOUR) * 60;
  return (
    <figure
      className={styles.figure}
      aria-label={`The newest ${evidence.length} finished operations of ${machine.name}: estimated against actual time.`}
    >
      <Legend count={evidence.length} />
      <ResponsiveContainer width="100%" height={300}>
        <ScatterChart margin={{ top: 8, right: 16, bottom: 20, left: 4 }}>
          <CartesianGrid stroke="var(--rule)" />
          <XAxis
            type="number"
            dataKey="minutes"
            domain={[0, most]}
            unit=" min"
            tick={{ fill: 'var(--ink-soft)', fontSize: 12 }}
            stroke="var(--rule-strong)"
            label={{ value: 'estimated', position: 'insideBottom', offset: -14, fill: 'var(--ink-soft)' }}
          />
          <YAxis
            type="number"
            dataKey="actual"
            domain={[0, most]}
            unit=" min"
            width={72}
            tick={{ fill: 'var(--ink-soft)', fontSize: 12 }}
            stroke="var(--rule-strong)"
          />
          <Tooltip content={PointWords} isAnimationActive={false} />
          <ReferenceLine
            segment={[
              { x: 0, y: 0 },
              { x: most, y: most },
            ]}
            stroke="var(--ink)"
          />
          <Scatter data={pointsOf(evidence, 'present')} shape={InUse} isAnimationActive={false} />
          <Scatter data={pointsOf(evidence, 'proposed')} shape={Learned} isAnimationActive={false} />
        </ScatterChart>
      </ResponsiveContainer>
    </figure>
  );
}

interface Placed {
  cx?: number;
  cy?: number;
}

const InUse = ({ cx = 0, cy = 0 }: Placed) => (
  <circle cx={cx} cy={cy} r={3.5} fill="none" stroke="var(--hatch)" />
);
const Learned = ({ cx = 0, cy = 0 }: Placed) => (
  <path d={`M${cx - 3} ${cy}h6M${cx} ${cy - 3}v6`} stroke="var(--accent)" strokeWidth={1.5} />
);

const Legend = ({ count }: { count: number }) => (
  <ul className={styles.legend} aria-label="What is drawn">
    <li>
      <svg width="12" height="12" aria-hidden>
        <InUse cx={6} cy={6} />
      </svg>
      by the figures in use
    </li>
    <li>
      <svg width="12" height="12" aria-hidden>
        <Learned cx={6} cy={6} />
      </svg>
      by what finished work shows
    </li>
    <li>{`the newest ${count} operations; on the line, estimate and actual time agree`}</li>
  </ul>
);

/** What the pointer is over, in words. */
function PointWords({ active, payload }: { active?: boolean; payload?: readonly { payload?: Point }[] }) {
  const point = payload?.[0]?.payload;
  if (!active || !point) return null;
  return (
    <div className={styles.tip}>
      <strong>{point.id}</strong>
      <span>{`${formatDuration(point.minutes * 60)} estimated`}</span>
      <span>{`${formatDuration(point.actual * 60)} actual`}</span>
    </div>
  );
}
