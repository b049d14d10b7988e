import { memo, type ReactNode } from 'react';
import { formatDuration } from '../../core/units/duration.ts';
import { classes } from '../ui/classes.ts';
import type { Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import type { Bar, Lane, Run } from './lanes.ts';
import { xOf, type Scale } from './scale.ts';

/** The strip's element, for aria-activedescendant. */
export const stripId = (operation: string): string => `strip-${operation}`;

/** What a screen reader says of a strip; the side panel has the rest. */
export function stripName(bar: Bar): string {
  const step = bar.operation.endsWith(':shear') ? 'shearing' : 'bending';
  const late = bar.tardiness > 0 && `${formatDuration(bar.tardiness)} late`;
  const words = [
    `${bar.lineId} ${step}`,
    bar.partName,
    `${bar.quantity} pieces`,
    `${bar.gauge} ${bar.colourName}`,
  ];
  return [...words, late, bar.pinned && 'pinned', bar.begun && 'begun'].filter(Boolean).join(', ');
}

interface Props {
  lanes: readonly Lane[];
  geometry: Geometry;
  /** Subtracted from every instant, so that the numbers stay small enough to be drawn exactly. */
  origin: number;
  selected: string | null;
  /** The operation being dragged: drawn where it would land. */
  dragged: string | null;
}

const LATE_PX = 5;

interface StripProps {
  bar: Bar;
  geometry: Geometry;
  origin: number;
  selected: boolean;
  ghost: boolean;
}

const Strip = memo(function Strip({ bar, geometry, origin, selected, ghost }: StripProps) {
  const { stripY, stripHeight } = geometry;
  const start = bar.start - origin;
  const width = bar.end - bar.start;
  const rests = bar.pieces.length !== 1 || bar.pieces[0]!.end - bar.pieces[0]!.start < width;
  const strip = { y: stripY, height: stripHeight, fill: bar.hex };
  return (
    <g className={ghost ? styles.ghost : undefined}>
      {bar.changeoverSeconds > 0 && (
        <rect
          className={styles.changeover}
          x={bar.changeoverStart - origin}
          y={stripY + 6}
          width={bar.start - bar.changeoverStart}
          height={stripHeight - 12}
        />
      )}
      <rect
        {...strip}
        id={stripId(bar.operation)}
        role="option"
        aria-label={stripName(bar)}
        aria-selected={selected}
        x={start}
        width={width}
        className={classes(styles.strip, rests && styles.resting)}
      />
      {rests &&
        bar.pieces.map((piece) => (
          <rect key={piece.start} {...strip} x={piece.start - origin} width={piece.end - piece.start} />
        ))}
      {bar.tardiness > 0 && (
        <rect
          className={styles.lateEdge}
          x={start}
          y={stripY + stripHeight - LATE_PX}
          width={width}
          height={LATE_PX}
        />
      )}
    </g>
  );
});

const Bracket = ({ run, y, origin }: { run: Run; y: number; origin: number }) => (
  <path className={styles.bracket} d={`M${run.start - origin} ${y + 4}V${y}H${run.end - origin}V${y + 4}`} />
);

/**
 * Strips, changeovers, runs and closed hours, drawn once in seconds: looking closer or further along only changes the
 * transform of `StripsFrame`, not one of these elements.
 */
export const StripsLayer = memo(function StripsLayer({ lanes, geometry, origin, selected, dragged }: Props) {
  const { laneHeight } = geometry;
  return lanes.map((lane, i) => (
    <g key={lane.machine.id} transform={`translate(0 ${i * laneHeight})`}>
      {lane.closed.map(({ start, end }) => (
        <rect
          key={start}
          className={styles.closed}
          x={start - origin}
          y={0}
          width={end - start}
          height={laneHeight}
        />
      ))}
      {lane.runs.map((run) => (
        <Bracket key={run.start} run={run} y={geometry.bracketY} origin={origin} />
      ))}
      <g role="listbox" aria-label={`${lane.machine.name} queue`}>
        {lane.bars.map((bar) => (
          <Strip
            key={bar.operation}
            bar={bar}
            geometry={geometry}
            origin={origin}
            selected={bar.operation === selected}
            ghost={bar.operation === dragged}
          />
        ))}
      </g>
    </g>
  ));
});

const HATCH_PX = 6;

/** Puts what is drawn in seconds where the scale says. */
export function StripsFrame({
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
    <g transform={`translate(${xOf(scale, origin)} 0) scale(${1 / perPixel} 1)`}>
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
