import { barBox, type Geometry } from './geometry.ts';
import { firstWhere, type Bar, type Lane } from './lanes.ts';
import { instantAt, xOf, type Scale } from './scale.ts';

/** A bar thinner than a finger's aim can be hit this many pixels beside it. */
const SLACK_PX = 3;

/** The lane under a height, or null above and below the lanes. */
export function laneAt(lanes: readonly Lane[], geometry: Geometry, y: number): number | null {
  const lane = Math.floor(y / geometry.laneHeight);
  return y >= 0 && lane < lanes.length ? lane : null;
}

/** Does a bar stand at this height of its lane? */
const onLevel = (bar: Bar, geometry: Geometry, inLane: number): boolean => {
  const { y, height } = barBox(geometry, bar);
  return y <= inLane && inLane < y + height;
};

/** The first bar of the run whose bracket, or the words over it, is under a point of the board. */
export function runAt(
  lanes: readonly Lane[],
  geometry: Geometry,
  scale: Scale,
  x: number,
  y: number,
): { readonly lane: Lane; readonly bar: Bar } | null {
  const lane = lanes[laneAt(lanes, geometry, y) ?? -1];
  if (!lane || y % geometry.laneHeight >= geometry.barY) return null;
  const at = instantAt(scale, x);
  const run = lane.runs[firstWhere(lane.runs, ({ end }) => end > at)];
  const bar = run && run.start <= at ? lane.bars[run.first] : undefined;
  return bar ? { lane, bar } : null;
}

/** The bar under a point of the board, or null on empty ground. A started changeover belongs to its operation. */
export function barAt(
  lanes: readonly Lane[],
  geometry: Geometry,
  scale: Scale,
  x: number,
  y: number,
): Bar | null {
  const lane = laneAt(lanes, geometry, y);
  if (lane === null) return null;
  const inLane = y - lane * geometry.laneHeight;
  if (inLane < geometry.barY || inLane > geometry.railY) return null;
  const { bars: all } = lanes[lane]!;
  const bars = (all[0]?.levels ?? 1) > 1 ? all.filter((bar) => onLevel(bar, geometry, inLane)) : all;
  const at = instantAt(scale, x);
  const next = firstWhere(bars, (bar) => bar.end > at);
  const candidates = [bars[next], bars[next - 1]].filter((bar) => bar !== undefined);
  const distance = (bar: Bar) => Math.max(xOf(scale, bar.start) - x, x - xOf(scale, bar.end), 0);
  const inside = candidates.find((bar) => bar.changeoverStart <= at && at < bar.end);
  if (inside) return inside;
  return (
    candidates.sort((a, b) => distance(a) - distance(b)).find((bar) => distance(bar) <= SLACK_PX) ?? null
  );
}
