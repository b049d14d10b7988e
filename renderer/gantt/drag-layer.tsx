import { inkOn } from './contrast.ts';
import type { Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import type { Scale } from './scale.ts';
import type { Drag } from './use-pointer.ts';

const LEAST_PX = 60;

/** The bar in the hand. */
export function DragLayer({ drag, scale, geometry }: { drag: Drag; scale: Scale; geometry: Geometry }) {
  const { bar } = drag;
  const width = Math.max(LEAST_PX, Math.min(scale.width / 2, (bar.end - bar.start) / scale.perPixel));
  const x = drag.x - Math.min(drag.grabX, width - 8);
  const y = drag.y - geometry.barHeight / 2;
  return (
    <g className={styles.inHand} aria-hidden>
      <rect x={x} y={y} width={width} height={geometry.barHeight} fill={bar.hex} />
      <text x={x + 6} y={y + 16} fill={`var(--on-${inkOn(bar.hex) === 'black' ? 'light' : 'dark'}-bar)`}>
        {bar.lineId}
      </text>
    </g>
  );
}

interface Refusal {
  readonly lane: number;
  /** Why, a sentence. */
  readonly why: string;
}

interface RefusingProps {
  refusals: readonly Refusal[];
  scale: Scale;
  geometry: Geometry;
}

/** Machines that cannot do the operation in the hand. */
export const RefusingLanes = ({ refusals, scale, geometry }: RefusingProps) =>
  refusals.map(({ lane, why }) => (
    <g key={lane} transform={`translate(0 ${lane * geometry.laneHeight})`}>
      <rect className={styles.refusing} width={scale.width} height={geometry.laneHeight} />
      <rect
        className={styles.refusingGround}
        x={8}
        y={8}
        width={Math.min(scale.width - 16, why.length * 7 + 20)}
        height={26}
      />
      <text className={styles.refusingWords} x={18} y={25}>
        {why}
      </text>
    </g>
  ));
