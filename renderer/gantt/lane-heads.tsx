import { EllipsisVertical } from 'lucide-react';
import { shortStageName } from '../../core/part/stage.ts';
import type { Machine } from '../../core/shop/machine.ts';
import { IconButton } from '../ui/icon-button.tsx';
import { Menu, type MenuEntry } from '../ui/menu.tsx';
import type { Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import type { Lane } from './lanes.ts';
import reading from './reading.module.css';
import { counted } from '../../core/units/count.ts';

/** From so high on a lane's head has room for words at its foot. */
const ROOMY_PX = 160;

interface Props {
  lanes: readonly Lane[];
  geometry: Geometry;
  /** What can be done with a machine. */
  menuOf: (machine: Machine) => readonly MenuEntry[];
  /** Whether a strip under the bars shows the published plan. */
  under: boolean;
}

/** Names of the machines at the left of their lanes, each with a menu. */
export const LaneHeads = ({ lanes, geometry, menuOf, under }: Props) => (
  <div className={styles.heads}>
    {lanes.map(({ machine, bars, shut }) => {
      const late = bars.filter((bar) => bar.last && bar.tardiness > 0).length;
      return (
        <div key={machine.id} className={styles.head} style={{ height: geometry.laneHeight }}>
          <b className={styles.headName} title={machine.name}>
            {machine.name}
          </b>
          <span>
            {machine.id} · {shortStageName(machine.stage)}
          </span>
          {shut === null ? (
            <span>{counted(bars.length, 'operation')}</span>
          ) : (
            <span className={styles.headShut}>◆ no open hours</span>
          )}
          <span className={styles.headMenu}>
            <Menu label={machine.name} entries={menuOf(machine)}>
              <IconButton label={`${machine.name}: more`} icon={EllipsisVertical} small />
            </Menu>
          </span>
          {under && geometry.laneHeight >= ROOMY_PX && (
            <span className={reading.underHead}>as published</span>
          )}
          {late > 0 && <span className={styles.headLate}>▲ {late} late</span>}
        </div>
      );
    })}
  </div>
);
