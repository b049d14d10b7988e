import { memo } from 'react';
import { Pin } from 'lucide-react';
import { inkOn } from './contrast.ts';
import { barBox, type Geometry } from './geometry.ts';
import styles from './gantt.module.css';
import reading from './reading.module.css';
import {
  CHARACTER_PX,
  LINE_PX,
  blocksOf,
  dueMarks,
  labelsOf,
  lateMarks,
  type Block,
  type Label,
} from './labels.ts';
import { barsIn, near, type Lane } from './lanes.ts';
import { FAR_S } from './bars-layer.tsx';
import { endOf, xOf, type Scale } from './scale.ts';

const PIN_PX = 12;
const ink = (hex: string) => `var(--on-${inkOn(hex) === 'black' ? 'light' : 'dark'}-bar)`;

const Upright = ({ x, y, words }: { x: number; y: number; words: string }) => (
  <text className={reading.upright} transform={`translate(${x} ${y}) rotate(-90)`}>
    {words}
  </text>
);

function BarWords({ label, geometry }: { label: Label; geometry: Geometry }) {
  const { y, height } = barBox(geometry, label.bar);
  return (
    <g fill={ink(label.bar.hex)}>
      {label.upright ? (
        <Upright x={label.x} y={y + height / 2} words={label.lines[0] ?? ''} />
      ) : (
        <Flat lines={label.lines} x={label.x} y={y} />
      )}
    </g>
  );
}

const Flat = ({ lines, x, y }: { lines: readonly string[]; x: number; y: number }) => (
  <text className={styles.barWords}>
    {lines.map((line, i) => (
      <tspan key={line} x={x} y={y + LINE_PX * (i + 1)} className={i === 0 ? styles.first : undefined}>
        {line}
      </tspan>
    ))}
  </text>
);

/** A run as one block; over bars of several colours its words have a ground of their own. */
function BlockWords({ block, geometry }: { block: Block; geometry: Geometry }) {
  const { x, width, lines, upright, hex } = block;
  const { barY, barHeight } = geometry;
  return (
    <g className={hex === null ? reading.mixed : undefined} fill={hex === null ? undefined : ink(hex)}>
      <rect className={reading.block} x={x + 1} y={barY + 1} width={width - 2} height={barHeight - 2} />
      {hex === null && (
        <rect
          className={reading.blockGround}
          x={x + 2}
          y={barY + 2}
          width={width - 4}
          height={upright ? barHeight - 4 : LINE_PX * lines.length + 4}
        />
      )}
      {upright ? (
        <Upright x={x + width / 2} y={barY + barHeight / 2} words={lines[0] ?? ''} />
      ) : (
        <Flat lines={lines} x={x + 5} y={barY} />
      )}
    </g>
  );
}

interface LaneProps {
  lane: Lane;
  scale: Scale;
  geometry: Geometry;
}

/** Words of the runs above the bars, where the bracket is long enough and no block says them. */
function RunWords({ lane, scale, geometry, blocks }: LaneProps & { blocks: readonly Block[] }) {
  if (scale.perPixel > FAR_S) return null;
  const told = new Set(blocks.map(({ run }) => run));
  return near(lane.runs, scale.from, endOf(scale)).flatMap((run) => {
    if (told.has(run)) return [];
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

function Rail({ lane, scale, geometry }: LaneProps) {
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

function Pins({ lane, scale, geometry }: LaneProps) {
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
        color={ink(bar.hex)}
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

/** The bars' words, or the run's where it is a block. */
function LaneWords({ lane, scale, geometry }: LaneProps) {
  const labels = labelsOf(lane, scale, geometry.barHeight);
  const blocks = blocksOf(lane, scale, geometry.barHeight, labels);
  const inBlock = new Set(
    blocks
      .flatMap(({ run }) => lane.bars.slice(run.first, run.first + run.count))
      .map((bar) => bar.operation),
  );
  return (
    <>
      <RunWords {...{ lane, scale, geometry, blocks }} />
      {blocks.map((block) => (
        <BlockWords key={block.run.first} block={block} geometry={geometry} />
      ))}
      {labels
        .filter(({ bar }) => !inBlock.has(bar.operation))
        .map((label) => (
          <BarWords key={label.bar.operation} label={label} geometry={geometry} />
        ))}
    </>
  );
}

interface Props {
  lanes: readonly Lane[];
  scale: Scale;
  geometry: Geometry;
}

/** Everything with words or a shape of its own size: drawn in pixels, and only for what is in sight. */
export const LabelsLayer = memo(function LabelsLayer({ lanes, scale, geometry }: Props) {
  return lanes.map((lane, i) => (
    <g
      pointerEvents="none"
      key={lane.machine.id}
      transform={`translate(0 ${i * geometry.laneHeight})`}
      aria-hidden={lane.shut === null}
    >
      <LaneLabels {...{ lane, scale, geometry }} />
    </g>
  ));
});

/** Drawn again only where the lane is another: not while something is dragged over it. */
const LaneLabels = memo(function LaneLabels({
  lane,
  scale,
  geometry,
}: Omit<Props, 'lanes'> & { lane: Lane }) {
  return (
    <>
      {lane.shut !== null && <ShutWords words={lane.shut} width={scale.width} height={geometry.laneHeight} />}
      <LaneWords lane={lane} scale={scale} geometry={geometry} />
      <Pins lane={lane} scale={scale} geometry={geometry} />
      <Rail lane={lane} scale={scale} geometry={geometry} />
    </>
  );
});
