import { memo } from 'react';
import { lanePaths } from './bar-paths.ts';
import type { BoardReading, Lacking } from './board-reading.ts';
import { breaksIn, type Fold } from './fold.ts';
import { barBox, underOf, type Geometry } from './geometry.ts';
import { barsIn, type Bar, type Lane } from './lanes.ts';
import styles from './reading.module.css';
import { endOf, xOf, type Scale } from './scale.ts';

interface Props {
  lanes: readonly Lane[];
  scale: Scale;
  geometry: Geometry;
}

const SEAM_PX = 1;

/** What the filter leaves out, under a veil: one path a lane. */
const FadeLayer = memo(function FadeLayer(props: Props & { fits: ReadonlySet<string> | null }) {
  const { lanes, scale, geometry, fits } = props;
  if (!fits) return null;
  const boxOf = (bar: Bar): string => {
    const { y, height } = barBox(geometry, bar);
    const x = xOf(scale, bar.changeoverStart);
    return `M${x - SEAM_PX} ${y - SEAM_PX}H${xOf(scale, bar.end) + SEAM_PX}v${height + 2 * SEAM_PX}H${x - SEAM_PX}z`;
  };
  return lanes.map((lane, i) => (
    <path
      key={lane.machine.id}
      className={styles.faded}
      transform={`translate(0 ${i * geometry.laneHeight})`}
      d={barsIn(lane, scale.from, endOf(scale))
        .filter((bar) => !fits.has(bar.operation))
        .map(boxOf)
        .join('')}
      aria-hidden
    />
  ));
});

/** What the mark says beside its shape, where the bar is wide enough. */
const lackingWords = { missing: 'no metal', overdue: 'metal late', awaited: 'metal due' } as const;
const MARK = { width: 12, words: 74, height: 14 };

/** An open diamond on each bar whose metal is not there; an exclamation in it where none is on its way. */
const LackingLayer = memo(function LackingLayer(props: Props & { lacking: Lacking }) {
  const { lanes, scale, geometry, lacking } = props;
  if (lacking.size === 0) return null;
  return lanes.flatMap((lane, i) =>
    barsIn(lane, scale.from, endOf(scale)).flatMap((bar) => {
      const is = lacking.get(bar.operation);
      const left = Math.max(0, xOf(scale, bar.start));
      const width = Math.min(scale.width, xOf(scale, bar.end)) - left;
      if (is === undefined || width < 0) return [];
      const { y, height } = barBox(geometry, bar);
      const [x, top] = [left + 2, i * geometry.laneHeight + y + height - MARK.height - 3];
      const wide = width > MARK.words + 4;
      return (
        <g key={bar.operation} pointerEvents="none" aria-hidden transform={`translate(${x} ${top})`}>
          {wide && <rect className={styles.lacking} width={MARK.words} height={MARK.height} />}
          <path className={styles.lacking} d="M6.5 1l6 6l-6 6l-6 -6z" />
          {is !== 'awaited' && (
            <text className={styles.lackingSign} x={6.5} y={11} textAnchor="middle">
              !
            </text>
          )}
          {wide && (
            <text className={styles.lackingSign} x={16} y={11}>
              {lackingWords[is]}
            </text>
          )}
        </g>
      );
    }),
  );
});

/** Where closed time is folded away. */
const BreaksLayer = ({ fold, scale, height }: { fold: Fold; scale: Scale; height: number }) => (
  <path
    className={styles.break}
    d={breaksIn(fold, scale)
      .map(({ at }) => `M${xOf(scale, at)} 0V${height}`)
      .join('')}
    aria-hidden
  />
);

interface UnderProps {
  lanes: readonly Lane[];
  geometry: Geometry;
  origin: number;
  from: number;
  to: number;
}

/** The plan that floor and paper follow, as a strip under the bars of the draft; in seconds, like the bars. */
export const PublishedLayer = memo(function PublishedLayer(props: UnderProps) {
  const { lanes, geometry, origin, from, to } = props;
  return lanes.map((lane, i) => (
    <g
      key={lane.machine.id}
      transform={`translate(0 ${i * geometry.laneHeight})`}
      className={styles.published}
    >
      {lanePaths(lane, underOf(geometry), origin, { start: from, end: to }).colours.map(
        ({ hex, bars, ties }) => (
          <g key={hex} fill={hex}>
            <path d={ties} />
            <path d={bars} />
          </g>
        ),
      )}
    </g>
  ));
});

/** Where the selected operation stands in the published plan. */
function PublishedPlace({ lanes, scale, geometry, selected }: Props & { selected: string | null }) {
  const under = underOf(geometry);
  return lanes.flatMap((lane, i) =>
    lane.bars
      .filter((bar) => bar.operation === selected)
      .map((bar) => (
        <rect
          key={bar.operation}
          className={styles.publishedPlace}
          x={xOf(scale, bar.start) - 1}
          y={i * geometry.laneHeight + under.barY - 1}
          width={(bar.end - bar.start) / scale.perPixel + 2}
          height={under.barHeight + 2}
          aria-hidden
        />
      )),
  );
}

interface ReadingProps extends Props {
  selected: string | null;
  height: number;
  reading: BoardReading;
}

/** All of it that stands over the bars. */
export const ReadingLayers = ({ selected, height, reading, ...board }: ReadingProps) => (
  <>
    <LackingLayer {...board} lacking={reading.lacking} />
    <FadeLayer {...board} fits={reading.fits} />
    <BreaksLayer scale={board.scale} fold={reading.fold} height={height} />
    {reading.published && <PublishedPlace {...board} lanes={reading.published} selected={selected} />}
  </>
);
