import type { Interval } from '../../core/time/interval.ts';
import { barBox, type Geometry } from './geometry.ts';
import { barsIn, near, type Bar, type Lane } from './lanes.ts';
import { spanOf, type Scale } from './scale.ts';

/** A lane as a handful of SVG paths, x in seconds from an origin and y in pixels from the lane's top. */
interface LanePaths {
  readonly closed: string;
  /** A bracket over each run. */
  readonly runs: string;
  readonly changeovers: string;
  /** The bars of one sheet colour, and the thin ties that hold their pieces together over closed hours. */
  readonly colours: readonly { readonly hex: string; readonly bars: string; readonly ties: string }[];
  /** An edge along the foot of each late bar. */
  readonly late: string;
}

const LATE_PX = 5;
const BRACKET_PX = 4;
const CHANGEOVER_INSET_PX = 6;
/** Height of a tie as a share of the bar's. */
const TIE = 0.12;

interface Box {
  readonly y: number;
  readonly height: number;
}
const tieOf = ({ y, height }: Box): Box => ({ y: y + (height * (1 - TIE)) / 2, height: height * TIE });
const footOf = ({ y, height }: Box): Box => ({
  y: y + height - Math.min(LATE_PX, height),
  height: Math.min(LATE_PX, height),
});

const box = ({ start, end }: Interval, origin: number, y: number, height: number): string =>
  `M${start - origin} ${y}h${end - start}v${height}h${start - end}z`;

const boxes = (stretches: readonly Interval[], origin: number, y: number, height: number): string =>
  stretches.map((stretch) => box(stretch, origin, y, height)).join('');

/**
 * The stretch of time to draw for a window: the window with more on either side, in steps that double with its span, so
 * that it stays the same while one looks along or closer, and is drawn again only now and then.
 */
export function stretchFor(scale: Scale): Interval {
  const step = 2 ** (Math.ceil(Math.log2(spanOf(scale))) - 2);
  const start = Math.floor(scale.from / step) * step;
  return { start, end: start + 5 * step };
}

/**
 * Everything of a lane that is drawn in time, as far as it touches `stretch`. One path a colour instead of one element
 * an operation, so that a plan of thousands of operations moves and zooms as lightly as a small one.
 */
export function lanePaths(lane: Lane, geometry: Geometry, origin: number, stretch: Interval): LanePaths {
  const { barY, barHeight, bracketY, laneHeight } = geometry;
  const inStretch = <T extends Interval>(items: readonly T[]) => near(items, stretch.start, stretch.end);
  const bars = barsIn(lane, stretch.start, stretch.end);
  const onLevel = (bar: Bar, items: readonly Interval[], at: (box: Box) => Box) => {
    const { y, height } = at(barBox(geometry, bar));
    return boxes(items, origin, y, height);
  };
  return {
    closed: boxes(inStretch(lane.closed), origin, 0, laneHeight),
    runs: inStretch(lane.runs)
      .map(
        ({ start, end }) =>
          `M${start - origin} ${bracketY + BRACKET_PX}V${bracketY}H${end - origin}v${BRACKET_PX}`,
      )
      .join(''),
    changeovers: boxes(
      bars.flatMap((bar) => bar.changeoverPieces),
      origin,
      barY + CHANGEOVER_INSET_PX,
      barHeight - 2 * CHANGEOVER_INSET_PX,
    ),
    colours: coloursOf(bars).map(([hex, same]) => ({
      hex,
      bars: same.map((bar) => onLevel(bar, bar.pieces, (whole) => whole)).join(''),
      ties: same
        .filter((bar) => bar.pieces.length > 1)
        .map((bar) => onLevel(bar, [bar], tieOf))
        .join(''),
    })),
    late: bars
      .filter((bar) => bar.tardiness > 0)
      .map((bar) => onLevel(bar, bar.pieces, footOf))
      .join(''),
  };
}

function coloursOf(bars: readonly Bar[]): [string, Bar[]][] {
  const byHex = new Map<string, Bar[]>();
  for (const bar of bars) {
    const same = byHex.get(bar.hex);
    if (same) same.push(bar);
    else byHex.set(bar.hex, [bar]);
  }
  return [...byHex];
}
