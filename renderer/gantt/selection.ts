import { findBar } from './drop.ts';
import { barBox, type Geometry } from './geometry.ts';
import { barsIn, type Lane } from './lanes.ts';
import { instantAt, type Scale } from './scale.ts';

/** Corners of a rubber band, in pixels of the board. */
export interface Band {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The operations of the bars that a rubber band touches, lane by lane in queue order. */
export function inBand(lanes: readonly Lane[], geometry: Geometry, scale: Scale, band: Band): string[] {
  const [left, right] = [Math.min(band.x0, band.x1), Math.max(band.x0, band.x1)];
  const [top, bottom] = [Math.min(band.y0, band.y1), Math.max(band.y0, band.y1)];
  return lanes.flatMap((lane, i) =>
    barsIn(lane, instantAt(scale, left), instantAt(scale, right)).flatMap((bar) => {
      const { y, height } = barBox(geometry, bar);
      const barTop = i * geometry.laneHeight + y;
      return barTop <= bottom && barTop + height >= top ? [bar.operation] : [];
    }),
  );
}

/** From one operation to another of the same lane, both with what stands between; across lanes only the other. */
export function rangeInLane(lanes: readonly Lane[], from: string | null, to: string): readonly string[] {
  const [a, b] = [findBar(lanes, from), findBar(lanes, to)];
  const bars = a && b && a.lane === b.lane ? lanes[a.lane]?.bars : undefined;
  if (!a || !b || !bars) return [to];
  const [first, last] = [bars.indexOf(a.bar), bars.indexOf(b.bar)].sort((m, n) => m - n) as [number, number];
  return bars.slice(first, last + 1).map((bar) => bar.operation);
}

/** Chosen ones with others beside them, each once. */
export const joined = (chosen: readonly string[], more: readonly string[]): readonly string[] => [
  ...new Set([...chosen, ...more]),
];

/** Chosen ones without those named, where all of them were chosen already; else with them. */
export const toggled = (chosen: readonly string[], named: readonly string[]): readonly string[] =>
  named.every((operation) => chosen.includes(operation))
    ? chosen.filter((operation) => !named.includes(operation))
    : joined(chosen, named);
