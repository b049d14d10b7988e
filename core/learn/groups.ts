/** Counts this near to proportional tell two standards apart by nothing but rounding. */
const SAME = 1e-6;

/**
 * Puts columns that are proportional to each other in every row into one group: data cannot tell them apart, so they
 * can only be learned together. Columns that are zero throughout are in no group.
 * @param columns values ≥ 0, all of one length
 * @returns groups of column numbers, in the order of their first column
 */
export function proportionalGroups(columns: readonly (readonly number[])[]): number[][] {
  const length = (column: readonly number[]): number => Math.sqrt(column.reduce((sum, v) => sum + v * v, 0));
  const groups: { direction: number[]; members: number[] }[] = [];
  columns.forEach((column, k) => {
    const norm = length(column);
    if (norm === 0) return;
    const direction = column.map((v) => v / norm);
    const home = groups.find((g) => length(g.direction.map((v, i) => v - direction[i]!)) < SAME);
    if (home) home.members.push(k);
    else groups.push({ direction, members: [k] });
  });
  return groups.map((g) => g.members);
}
