import { formatWall } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import { findBar } from './drop.ts';
import type { Fold } from './fold.ts';
import { barBox, type Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import type { Lane } from './lanes.ts';
import { endOf, xOf, type Scale } from './scale.ts';

interface Props {
  lanes: readonly Lane[];
  scale: Scale;
  geometry: Geometry;
  selected: string | null;
  timeZone: string;
  fold: Fold;
}

/** The selected operation, the rest of its order, and the date it is due. */
export function SelectionLayer({ lanes, scale, geometry, selected, timeZone, fold }: Props) {
  const found = findBar(lanes, selected);
  if (!found) return null;
  const { orderId, due } = found.bar;
  const outlines = lanes.flatMap((lane, i) =>
    lane.bars
      .filter((bar) => bar.orderId === orderId && bar.end > scale.from && bar.start < endOf(scale))
      .map((bar) => (
        <rect
          key={bar.operation}
          className={bar.operation === selected ? styles.selected : styles.sameOrder}
          x={xOf(scale, bar.start) - 2}
          y={i * geometry.laneHeight + barBox(geometry, bar).y - 2}
          width={(bar.end - bar.start) / scale.perPixel + 4}
          height={barBox(geometry, bar).height + 4}
        />
      )),
  );
  return (
    <g aria-hidden>
      {outlines}
      <DueLine
        x={xOf(scale, fold.at(due))}
        scale={scale}
        height={lanes.length * geometry.laneHeight}
        words={`due ${formatWall(instant(due), timeZone)}`}
      />
    </g>
  );
}

interface MarkedProps extends Omit<Props, 'selected' | 'timeZone' | 'fold'> {
  marked: readonly string[];
  /** `marked`: what stands beside the board speaks of them. `chosen`: they are moved together. */
  look?: 'marked' | 'chosen';
}

/** Operations to be told from the others. */
export function MarkedLayer({ lanes, scale, geometry, marked, look = 'marked' }: MarkedProps) {
  if (marked.length === 0) return null;
  const named = new Set(marked);
  return lanes.flatMap((lane, i) =>
    lane.bars
      .filter((bar) => named.has(bar.operation) && bar.end > scale.from && bar.start < endOf(scale))
      .map((bar) => (
        <rect
          key={bar.operation}
          className={styles[look]}
          x={xOf(scale, bar.start) - 1}
          y={i * geometry.laneHeight + barBox(geometry, bar).y - 5}
          width={(bar.end - bar.start) / scale.perPixel + 2}
          height={barBox(geometry, bar).height + 10}
          aria-hidden
        />
      )),
  );
}

function DueLine({ x, scale, height, words }: { x: number; scale: Scale; height: number; words: string }) {
  if (x < 0 || x > scale.width) return null;
  const flips = x > scale.width - 90;
  return (
    <>
      <path className={styles.dueLine} d={`M${x} 0V${height}`} />
      <text className={styles.dueWords} x={flips ? x - 4 : x + 4} y={12} textAnchor={flips ? 'end' : 'start'}>
        {words}
      </text>
    </>
  );
}

export function NowLine({ now, scale, height }: { now: number; scale: Scale; height: number }) {
  const x = xOf(scale, now);
  if (x < 0 || x > scale.width) return null;
  return <path className={styles.now} d={`M${x} 0V${height}`} aria-hidden />;
}
