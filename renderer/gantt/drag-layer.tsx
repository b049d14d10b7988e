import { inkOn } from './contrast.ts';
import type { BoardDoing } from './doing.ts';
import type { Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import type { Lane } from './lanes.ts';
import type { Scale } from './scale.ts';
import type { Band } from './selection.ts';
import type { Drag } from './use-pointer.ts';

const LEAST_PX = 60;

/** What is in the hand: the bar that was taken hold of, and how many go along. */
export function DragLayer({ drag, scale, geometry }: { drag: Drag; scale: Scale; geometry: Geometry }) {
  const { bar, operations } = drag;
  const more = operations.length - 1;
  const width = Math.max(LEAST_PX, Math.min(scale.width / 2, (bar.end - bar.start) / scale.perPixel));
  const x = drag.x - Math.min(drag.grabX, width - 8);
  const y = drag.y - geometry.barHeight / 2;
  return (
    <g className={styles.inHand} aria-hidden>
      {more > 0 && <rect x={x + 4} y={y + 4} width={width} height={geometry.barHeight} fill={bar.hex} />}
      <rect x={x} y={y} width={width} height={geometry.barHeight} fill={bar.hex} />
      <text x={x + 6} y={y + 16} fill={`var(--on-${inkOn(bar.hex) === 'black' ? 'light' : 'dark'}-bar)`}>
        {more > 0 ? `${bar.lineId} + ${more}` : bar.lineId}
      </text>
    </g>
  );
}

/** The rubber band. */
export const BandLayer = ({ band: { x0, y0, x1, y1 } }: { band: Band }) => (
  <rect
    className={styles.band}
    x={Math.min(x0, x1)}
    y={Math.min(y0, y1)}
    width={Math.abs(x1 - x0)}
    height={Math.abs(y1 - y0)}
    aria-hidden
  />
);

interface Refusal {
  readonly lane: number;
  /** Why, a sentence. */
  readonly why: string;
}

/** The lanes that cannot take what is in the hand. */
export const refusalsOf = (
  lanes: readonly Lane[],
  doing: BoardDoing,
  held: readonly string[] | null,
): readonly Refusal[] => {
  if (!held) return [];
  const able = doing.able(held);
  return lanes.flatMap(({ machine }, lane) =>
    able.has(machine.id) ? [] : [{ lane, why: doing.whyNot(held, machine.id) }],
  );
};

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
