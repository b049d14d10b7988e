import { useRef } from 'react';
import type { Interval } from '../../core/time/interval.ts';
import { axisOf } from './axis.ts';
import type { Lane } from './lanes.ts';
import { framesOf, MINI, MINI_HEAD, type Frame } from './mini.ts';
import styles from './mini.module.css';
import { fitted, xOf, type Scale } from './scale.ts';
import { lanePaths } from './bar-paths.ts';
import { FAR_S } from './bars-layer.tsx';
import { useSize } from './use-size.ts';

const AXIS_PX = 18;

interface Props {
  lanes: readonly Lane[];
  /** What it shows, the same in pictures that stand side by side. */
  window: Interval;
  timeZone: string;
  /** Lines to be found at once: framed, with a mark and their number. */
  lineIds: readonly string[];
  /** Operations that stand elsewhere than before: outlined with dashes. */
  moved: ReadonlySet<string>;
  label: string;
}

/** The machines' queues in the size of a stamp, to compare plans by eye. */
export function MiniPlan({ lanes, window, label, ...rest }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const height = AXIS_PX + lanes.length * MINI.laneHeight;
  const scale = fitted(window.start, window.end, width - MINI_HEAD);
  return (
    <div ref={place} className={styles.place} style={{ minHeight: height }}>
      {width > MINI_HEAD && (
        <svg width={width} height={height} role="img" aria-label={label}>
          <Days scale={scale} timeZone={rest.timeZone} height={height} />
          {lanes.map((lane, i) => (
            <g key={lane.machine.id} transform={`translate(0 ${AXIS_PX + i * MINI.laneHeight})`}>
              <text className={styles.head} x={0} y={MINI.barY + 13}>
                {lane.machine.id}
              </text>
              <g transform={`translate(${MINI_HEAD} 0)`}>
                <MiniLane lane={lane} scale={scale} {...rest} />
              </g>
            </g>
          ))}
        </svg>
      )}
    </div>
  );
}

/** The days along the top, each with a line down through the lanes. */
function Days({ scale, timeZone, height }: { scale: Scale; timeZone: string; height: number }) {
  const { upper } = axisOf(scale, timeZone);
  return (
    <g transform={`translate(${MINI_HEAD} 0)`}>
      {upper.map(({ at, label }, i) => {
        const x = Math.max(0, xOf(scale, at));
        const next = Math.min(scale.width, upper[i + 1] ? xOf(scale, upper[i + 1]!.at) : Infinity);
        return (
          <g key={at}>
            <path className={styles.day} d={`M${x} 0V${height}`} />
            {next - x > label.length * 6.8 && (
              <text className={styles.dayWords} x={x + 4} y={12}>
                {label}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

type LaneProps = Pick<Props, 'lineIds' | 'moved'> & { lane: Lane; scale: Scale };

function MiniLane({ lane, scale, lineIds, moved }: LaneProps) {
  const end = scale.from + scale.width * scale.perPixel;
  const { closed, colours, changeovers, late } = lanePaths(lane, MINI, scale.from, {
    start: scale.from,
    end,
  });
  const wanted = new Set(lineIds);
  return (
    <>
      <path className={styles.track} d={`M0 ${MINI.barY + MINI.barHeight}H${scale.width}`} />
      <svg width={scale.width} height={MINI.laneHeight} overflow="hidden">
        <g transform={`scale(${1 / scale.perPixel} 1)`}>
          <path className={styles.closed} d={closed} />
          <path className={styles.changeover} d={changeovers} />
          {colours.map(({ hex, bars, ties }) => (
            <g key={hex} fill={hex}>
              <path d={ties} />
              <path className={scale.perPixel > FAR_S ? undefined : styles.bar} d={bars} />
            </g>
          ))}
          <path className={styles.late} d={late} />
        </g>
      </svg>
      {framesOf(lane, scale, (bar) => moved.has(bar.operation) && !wanted.has(bar.lineId)).map((frame) => (
        <Box key={frame.bar.operation} frame={frame} look={styles.moved} />
      ))}
      {framesOf(lane, scale, (bar) => wanted.has(bar.lineId)).map((frame) => (
        <Marked key={frame.bar.operation} frame={frame} />
      ))}
    </>
  );
}

const Box = ({ frame: { x, width }, look }: { frame: Frame; look: string | undefined }) => (
  <rect className={look} x={x} y={MINI.barY} width={width} height={MINI.barHeight} />
);

/** A wanted line: a flag over its bar, its number beside the flag, a frame around it. */
const Marked = ({ frame }: { frame: Frame }) => (
  <g>
    <Box frame={frame} look={styles.wanted} />
    {frame.mark && <path className={styles.flag} d={`M${frame.x} ${MINI.barY - 1}v-10h8l-3 3l3 3h-6.5v4z`} />}
    {frame.words && (
      <text className={styles.wantedWords} x={frame.x + 11} y={MINI.barY - 3}>
        {frame.words}
      </text>
    )}
  </g>
);

/** What the marks mean; `wanted` null: no lines are flagged. */
export const MiniLegend = ({ wanted }: { wanted: string | null }) => (
  <p className={styles.legend}>
    {wanted !== null && (
      <span>
        <svg width="14" height="14" aria-hidden>
          <path className={styles.flag} d="M3 13v-11h8l-3 3l3 3h-6.5v5z" />
        </svg>
        {wanted}
      </span>
    )}
    <span>
      <svg width="18" height="14" aria-hidden>
        <rect className={styles.moved} x="1" y="2" width="16" height="10" />
      </svg>
      has moved
    </span>
    <span>
      <svg width="18" height="14" aria-hidden>
        <rect className={styles.late} x="1" y="8" width="16" height="4" />
      </svg>
      ends late
    </span>
  </p>
);
