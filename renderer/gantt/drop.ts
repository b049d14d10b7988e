import type { Bar, Lane } from './lanes.ts';

/** The bar of an operation and the number of its lane, or null when it is not on the board. */
export function findBar(lanes: readonly Lane[], operation: string | null): { bar: Bar; lane: number } | null {
  for (const [lane, { bars }] of lanes.entries()) {
    const bar = bars.find((one) => one.operation === operation);
    if (bar) return { bar, lane };
  }
  return null;
}

/** The operation to the left or right (`by` −1 or 1) in the same lane; itself at the end. */
export function besideInLane(lanes: readonly Lane[], operation: string, by: -1 | 1): string {
  const found = findBar(lanes, operation);
  return (found && lanes[found.lane]?.bars[found.bar.position + by]?.operation) ?? operation;
}

/** The operation nearest in time in the next lane above or below that has any; itself when there is none. */
export function besideInNextLane(lanes: readonly Lane[], operation: string, by: -1 | 1): string {
  const found = findBar(lanes, operation);
  if (!found) return operation;
  for (let lane = found.lane + by; lane >= 0 && lane < lanes.length; lane += by) {
    const bars = lanes[lane]!.bars;
    if (bars.length === 0) continue;
    const gap = (bar: Bar) => Math.max(bar.start - found.bar.start, found.bar.start - bar.end, 0);
    return bars.reduce((best, bar) => (gap(bar) < gap(best) ? bar : best)).operation;
  }
  return operation;
}
