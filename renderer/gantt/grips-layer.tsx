import { memo } from 'react';
import { FAR_S } from './bars-layer.tsx';
import type { Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import { near, type Lane } from './lanes.ts';
import { endOf, xOf, type Scale } from './scale.ts';

interface Props {
  lanes: readonly Lane[];
  scale: Scale;
  geometry: Geometry;
}

/** The brackets of the runs as handles: pressed they select their run, drawn along they move it. */
export const GripsLayer = memo(function GripsLayer({ lanes, scale, geometry }: Props) {
  if (scale.perPixel > FAR_S) return null;
  return lanes.map((lane, i) => (
    <g key={lane.machine.id} transform={`translate(0 ${i * geometry.laneHeight})`} aria-hidden>
      {near(lane.runs, scale.from, endOf(scale)).map((run) => (
        <rect
          key={run.start}
          className={styles.grip}
          x={xOf(scale, run.start)}
          width={(run.end - run.start) / scale.perPixel}
          height={geometry.barY}
        />
      ))}
    </g>
  ));
});
