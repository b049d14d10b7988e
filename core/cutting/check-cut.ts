import type { CutProblem, CutResult } from './cut-problem.ts';

/**
 * Checks a result against the problem with nothing but the two files: shares no code with the solver.
 * @returns a sentence for each broken rule: an unknown id, a piece that does not fit, stock used up, a wrong count, a wrong total
 */
export function checkCut(given: CutProblem, result: CutResult): string[] {
  const broken: string[] = [];
  const used = new Map<string, number>();
  const cut = new Map<string, number>();
  for (const pattern of result.patterns) {
    const stock = given.stock.find((piece) => piece.id === pattern.stock);
    if (!stock) {
      broken.push(`Stock ${pattern.stock} does not exist.`);
      continue;
    }
    if (!Number.isInteger(pattern.count) || pattern.count < 0)
      broken.push(`A pattern is used ${pattern.count} times.`);
    used.set(stock.id, (used.get(stock.id) ?? 0) + pattern.count);
    let length = given.trim;
    for (const [itemId, pieces] of Object.entries(pattern.items)) {
      const item = given.items.find((one) => one.id === itemId);
      if (!item) broken.push(`Item ${itemId} does not exist.`);
      else if (!Number.isInteger(pieces) || pieces < 0)
        broken.push(`Item ${itemId} is cut ${pieces} times from one piece.`);
      else length += item.length * pieces;
      cut.set(itemId, (cut.get(itemId) ?? 0) + pieces * pattern.count);
    }
    if (length > stock.length + 1e-6)
      broken.push(`Pieces of ${length} do not fit on stock ${stock.id} of ${stock.length}.`);
  }
  for (const stock of given.stock) {
    const taken = used.get(stock.id) ?? 0;
    if (stock.available !== null && taken > stock.available)
      broken.push(`Stock ${stock.id} is used ${taken} times of ${stock.available}.`);
  }
  for (const item of given.items) {
    const made = cut.get(item.id) ?? 0;
    if (made !== item.quantity)
      broken.push(`Item ${item.id} is cut ${made} times instead of ${item.quantity}.`);
  }
  const cost = given.stock.reduce((sum, piece) => sum + piece.cost * (used.get(piece.id) ?? 0), 0);
  if (Math.abs(cost - result.objective) > 1e-6 * Math.max(1, cost))
    broken.push(`The stock costs ${cost}, not ${result.objective}.`);
  return broken;
}
