import { Pin } from 'lucide-react';
import { inkOn } from './contrast.ts';
import { barBox, type Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import { CHARACTER_PX, dueMarks, labelsOf, lateMarks, type Label } from './labels.ts';
import { barsIn, near, type Lane } from './lanes.ts';
import { FAR_S } from './bars-layer.tsx';
import { endOf, xOf, type Scale } from './scale.ts';

const LINE_PX = 15;
const PIN_PX = 12;

const BarWords = ({ label, geometry }: { label: Label; geometry: Geometry }) => (
  <g fill={`var(--on-${inkOn(label.bar.hex) === 'black' ? 'light' : 'dark'}-bar)`}>
    <text className={styles.barWords}>
      {label.lines.map((line, i) => (
        <tspan
          key={line}
          x={label.x}
          y={barBox(geometry, label.bar).y + LINE_PX * (i + 1)}
          className={i === 0 ? styles.first : undefined}
        >
          {line}
        </tspan>
      ))}
    </text>
  </g>
);

/** Words of the runs above the bars, where the bracket is long enough. */
function RunWords({ lane, scale, geometry }: { lane: Lane; scale: Scale; geometry: Geometry }) {
  if (scale.perPixel > FAR_S) return null;
  return near(lane.runs, scale.from, endOf(scale)).flatMap((run) => {
    const left = Math.max(2, xOf(scale, run.start));
    const width = Math.min(scale.width, xOf(scale, run.end)) - left;
    const words = run.count > 1 ? `${run.title} × ${run.count}` : run.title;
    if (width < words.length * CHARACTER_PX) return [];
    return (
      <text key={run.start} x={left} y={geometry.bracketY - 4} className={styles.runWords}>
        {words}
      </text>
    );
  });
}

function Rail({ lane, scale, geometry }: { lane: Lane; scale: Scale; geometry: Geometry }) {
  const y = geometry.railY + 3;
  return (
    <>
      {dueMarks(lane, scale).map(({ due, x }) => (
        <path key={due} className={styles.due} d={`M${x} ${geometry.laneHeight - 10}l4 4l-4 4l-4-4z`} />
      ))}
      {lateMarks(lane, scale).map(({ lineId, x, words }) => (
        <g key={lineId} className={styles.late}>
          <path d={`M${x} ${y}l5 9h-10z`} />
          {words && (
            <text x={x + 8} y={y + 9}>
              {words}
            </text>
          )}
        </g>
      ))}
    </>
  );
}

function Pins({ lane, scale, geometry }: { lane: Lane; scale: Scale; geometry: Geometry }) {
  return barsIn(lane, scale.from, endOf(scale)).flatMap((bar) => {
    const right = Math.min(scale.width, xOf(scale, bar.end));
    if (!bar.pinned || right - xOf(scale, bar.start) < PIN_PX) return [];
    return (
      <Pin
        key={bar.operation}
        x={right - PIN_PX - 2}
        y={geometry.barY + geometry.barHeight - PIN_PX - 7}
        size={PIN_PX}
        strokeWidth={2.5}
        color={`var(--on-${inkOn(bar.hex) === 'black' ? 'light' : 'dark'}-bar)`}
        aria-hidden
      />
    );
  });
}

/** Why nothing stands in the lane of a machine that never opens. */
const ShutWords = ({ words, width, height }: { words: string; width: number; height: number }) => (
  <foreignObject x={12} y={8} width={Math.max(0, width - 24)} height={height - 16}>
    <p className={styles.shutWords}>{words}</p>
  </foreignObject>
);

/** Everything with words or a shape of its own size: drawn in pixels, and only for what is in sight. */
export function LabelsLayer({
  lanes,
  scale,
  geometry,
}: {
  lanes: readonly Lane[];
  scale: Scale;
  geometry: Geometry;
}) {
  const maxLines = Math.max(1, Math.floor((geometry.barHeight - 6) / LINE_PX));
  return lanes.map((lane, i) => (
    <g
      pointerEvents="none"
      key={lane.machine.id}
      transform={`translate(0 ${i * geometry.laneHeight})`}
      aria-hidden={lane.shut === null}
    >
      {lane.shut !== null && <ShutWords words={lane.shut} width={scale.width} height={geometry.laneHeight} />}
      <RunWords lane={lane} scale={scale} geometry={geometry} />
      {labelsOf(lane, scale, maxLines).map((label) => (
        <BarWords key={label.bar.operation} label={label} geometry={geometry} />
      ))}
      <Pins lane={lane} scale={scale} geometry={geometry} />
      <Rail lane={lane} scale={scale} geometry={geometry} />
    </g>
  ));
}
