import type { CrewInterval } from '../schedule/problem.ts';
import type { Shop } from '../shop/state.ts';

/**
 * How many people may work at once, from the beginning of time to an instant: what the shop counts, less those who are
 * out. When more are out than are counted, nobody is left.
 * @param until instant, epoch seconds
 * @returns ascending, each touching the next; null where the shop does not count people
 */
export function crewLimits(
  { settings: { crewLimit }, absence }: Pick<Shop, 'settings' | 'absence'>,
  until: number,
): CrewInterval[] | null {
  if (crewLimit === null) return null;
  const within = absence.flatMap(({ from, to }) => [from, to]).filter((at) => at > 0 && at < until);
  const edges = [...new Set([0, ...within, until])].sort((a, b) => a - b);
  return edges.slice(1).map((end, k) => {
    const start = edges[k]!;
    const out = absence
      .filter(({ from, to }) => from <= start && to >= end)
      .reduce((sum, { people }) => sum + people, 0);
    return { start, end, people: Math.max(0, crewLimit - out) };
  });
}
