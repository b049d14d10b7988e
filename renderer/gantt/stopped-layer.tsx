import type { Downtime } from '../../core/shop/machine.ts';
import { formatDayAndClock } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import type { Fold } from './fold.ts';
import type { Geometry } from './geometry.ts';
import styles from './stopped.module.css';
import type { Lane } from './lanes.ts';
import { endOf, xOf, type Scale } from './scale.ts';

const BAND = { top: 3, height: 16 };
/** About what a letter of the words takes. */
const LETTER_PX = 6.5;

/** Hours out of service that are not over, and what asks about them: they end earlier, or last longer. */
export interface StoppedHours {
  readonly rows: readonly Downtime[];
  readonly onAsk: (stopped: Downtime) => void;
}

interface Props {
  lanes: readonly Lane[];
  stopped: StoppedHours;
  scale: Scale;
  geometry: Geometry;
  timeZone: string;
  fold: Fold;
}

/** Over the lane of a machine that stands still: until when, and why. A press asks whether it is back, or takes longer. */
export function StoppedLayer({ lanes, stopped, scale, geometry, timeZone, fold }: Props) {
  return stopped.rows
    .filter(({ from, to }) => fold.at(to) > scale.from && fold.at(from) < endOf(scale))
    .map((row) => {
      const lane = lanes.findIndex(({ machine }) => machine.id === row.machineId);
      if (lane === -1) return null;
      const x = Math.max(0, xOf(scale, fold.at(row.from)));
      const width = Math.max(4, Math.min(scale.width, xOf(scale, fold.at(row.to))) - x);
      const until = `stopped until ${formatDayAndClock(instant(row.to), timeZone)}`;
      const told = row.reason ? `${until}: ${row.reason}` : until;
      const words = [told, until, 'stopped', '■'].find((each) => each.length * LETTER_PX + 8 < width);
      return (
        <g
          key={row.id}
          role="img"
          aria-label={`${lanes[lane]!.machine.name} ${told}`}
          className={styles.stopped}
          onPointerDown={(event) => event.stopPropagation()}
          onClick={() => stopped.onAsk(row)}
        >
          <title>{`${told}. Press: back early, or longer.`}</title>
          <rect x={x} y={lane * geometry.laneHeight + BAND.top} width={width} height={BAND.height} rx={2} />
          {words && (
            <text x={x + 5} y={lane * geometry.laneHeight + BAND.top + 12}>
              {words}
            </text>
          )}
        </g>
      );
    });
}
