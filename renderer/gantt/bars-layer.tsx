import { memo, type ReactNode } from 'react';
import type { Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import type { Lane } from './lanes.ts';
import { xOf, type Scale } from './scale.ts';
import { lanePaths } from './bar-paths.ts';

interface Props {
  lanes: readonly Lane[];
  geometry: Geometry;
  /** Subtracted from every instant, so that the numbers stay small enough to be drawn exactly. */
  origin: number;
  /** What of it to draw: [from, to). */
  from: number;
  to: number;
}

/** Solid while the machine is open, a thin tie while it rests; hatched while it is changed over. */
const LaneBars = memo(function LaneBars({
  lane,
  geometry,
  origin,
  from,
  to,
}: Omit<Props, 'lanes'> & { lane: Lane }) {
  const paths = lanePaths(lane, geometry, origin, { start: from, end: to });
  return (
    <>
      <path className={styles.closed} d={paths.closed} />
      <path className={styles.bracket} d={paths.runs} />
      <path className={styles.changeover} d={paths.changeovers} />
      {paths.colours.map(({ hex, bars, ties }) => (
        <g key={hex} fill={hex}>
          <path d={ties} />
          <path className={styles.bar} d={bars} />
        </g>
      ))}
      <path className={styles.lateEdge} d={paths.late} />
    </>
  );
});

/**
 * Bars, changeovers, runs and closed hours, drawn once in seconds: looking closer or further along only changes the
 * transform of `BarsFrame`, not one of these paths.
 */
export const BarsLayer = memo(function BarsLayer({ lanes, geometry, ...rest }: Props) {
  return lanes.map((lane, i) => (
    <g key={lane.machine.id} transform={`translate(0 ${i * geometry.laneHeight})`}>
      <LaneBars lane={lane} geometry={geometry} {...rest} />
    </g>
  ));
});

const HATCH_PX = 6;
/** From this many seconds a pixel on, edges and brackets would hide the colours of thin bars. */
export const FAR_S = 240;

/** Puts what is drawn in seconds where the scale says. */
export function BarsFrame({
  scale,
  origin,
  children,
}: {
  scale: Scale;
  origin: number;
  children: ReactNode;
}) {
  const { perPixel } = scale;
  return (
    <g
      transform={`translate(${xOf(scale, origin)} 0) scale(${1 / perPixel} 1)`}
      className={perPixel > FAR_S ? styles.far : styles.near}
      aria-hidden
    >
      <defs>
        <pattern
          id="hatch"
          width={HATCH_PX}
          height={HATCH_PX}
          patternUnits="userSpaceOnUse"
          patternTransform={`scale(${perPixel} 1) rotate(45)`}
        >
          <rect width={HATCH_PX} height={HATCH_PX} className={styles.hatchGround} />
          <rect width={2} height={HATCH_PX} className={styles.hatchLine} />
        </pattern>
      </defs>
      {children}
    </g>
  );
}
