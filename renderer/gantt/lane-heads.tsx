import type { Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import type { Lane } from './lanes.ts';

/** Names of the machines at the left of their lanes. */
export const LaneHeads = ({ lanes, geometry }: { lanes: readonly Lane[]; geometry: Geometry }) => (
  <div className={styles.heads}>
    {lanes.map(({ machine, bars, shut }) => {
      const late = bars.filter((bar) => bar.last && bar.tardiness > 0).length;
      return (
        <div key={machine.id} className={styles.head} style={{ height: geometry.laneHeight }}>
          <b className={styles.headName} title={machine.name}>
            {machine.name}
          </b>
          <span>
            {machine.id} · {machine.stage}
          </span>
          {shut === null ? (
            <span>{bars.length === 1 ? '1 operation' : `${bars.length} operations`}</span>
          ) : (
            <span className={styles.headShut}>◆ no open hours</span>
          )}
          {late > 0 && <span className={styles.headLate}>▲ {late} late</span>}
        </div>
      );
    })}
  </div>
);
