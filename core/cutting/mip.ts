import { roundUp, type Column, type Cover, type Use } from './cover.ts';

/**
 * A mixed-integer solver handed in from outside: takes a model as CPLEX LP text and answers within `seconds`, or sooner
 * when its caller has less time left. core/cutting works without one; with one it proves more.
 */
export type SolveMip = (lp: string, options: { readonly seconds: number }) => MipAnswer;

export interface MipAnswer {
  /** `stopped`: out of time, `columns` then holds the best found, if any. */
  readonly status: 'optimal' | 'infeasible' | 'stopped';
  /** Variable name → value; null when no solution is known. */
  readonly columns: Readonly<Record<string, number>> | null;
}

interface MipLimits {
  /** Only answers of this cost or less are of interest. */
  readonly atMost: number;
  /** Known lower bound: when it meets `atMost`, any answer will do and the model needs no objective. */
  readonly atLeast: number;
  readonly seconds: number;
}

/**
 * The cheapest whole-number use of the given columns within the limits.
 * @returns uses, or null with `exhausted` true when there is none among these columns
 */
export function solveOverColumns<T>(
  cover: Cover<T>,
  columns: readonly Column<T>[],
  limits: MipLimits,
  solve: SolveMip,
): { uses: Use<T>[] | null; exhausted: boolean } {
  const covered = new Set(columns.flatMap((column) => column.pieces.map(([item]) => item)));
  if (cover.demand.some((pieces, item) => pieces > 0 && !covered.has(item)))
    return { uses: null, exhausted: true };
  const answer = solve(modelText(cover, columns, limits), { seconds: limits.seconds });
  if (answer.status === 'infeasible') return { uses: null, exhausted: true };
  if (!answer.columns) return { uses: null, exhausted: false };
  const found = answer.columns;
  const uses = columns
    .map((column, at) => ({ column, count: Math.round(found[`x${at}`] ?? 0) }))
    .filter((use) => use.count > 0);
  return { uses: covers(cover, uses) ? uses : null, exhausted: answer.status === 'optimal' };
}

function modelText(cover: Cover, columns: readonly Column[], limits: MipLimits): string {
  const row = (terms: string[], end: string, name: string): string => ` ${name}: ${wrap(terms)} ${end}`;
  const cost = columns.map((column, at) => `${column.cost} x${at}`);
  const items: string[][] = cover.demand.map(() => []);
  const stocks: string[][] = cover.stock.map(() => []);
  columns.forEach((column, at) => {
    for (const [item, count] of column.pieces) items[item]?.push(`${count} x${at}`);
    stocks[column.stock]?.push(`${column.use} x${at}`);
  });
  const anyWillDo = roundUp(cover, limits.atLeast) >= limits.atMost;
  const lines = ['Minimize', row(anyWillDo ? ['0 x0'] : cost, '', 'cost')];
  lines.push('Subject To');
  // Only where any answer within it will do: elsewhere the row keeps the solver's own heuristics from finding any.
  if (anyWillDo) lines.push(row(cost, `<= ${limits.atMost}`, 'limit'));
  cover.demand.forEach((pieces, item) => {
    if (pieces > 0) lines.push(row(items[item] ?? [], `>= ${pieces}`, `item${item}`));
  });
  cover.stock.forEach(({ available }, stock) => {
    if (available !== null && (stocks[stock] ?? []).length > 0)
      lines.push(row(stocks[stock] ?? [], `<= ${available}`, `stock${stock}`));
  });
  return [
    ...lines,
    'General',
    wrap(
      columns.map((_, at) => `x${at}`),
      ' ',
    ),
    'End',
    '',
  ].join('\n');
}

/** Terms joined, broken into lines of readable length (the format limits a line to 255 or 560 characters). */
function wrap(terms: readonly string[], joint = ' + '): string {
  const lines: string[] = [];
  for (let at = 0; at < terms.length; at += 10) lines.push(terms.slice(at, at + 10).join(joint));
  return lines.join(`${joint}\n   `);
}

/** Guards against a solver's rounding: whole numbers must cover the demand exactly as asked. */
function covers(cover: Cover, uses: readonly Use[]): boolean {
  const left = cover.demand.slice();
  const stock = cover.stock.map((one) => one.available ?? Infinity);
  for (const { column, count } of uses) {
    for (const [item, pieces] of column.pieces) left[item] = (left[item] as number) - pieces * count;
    stock[column.stock] = (stock[column.stock] as number) - column.use * count;
  }
  return left.every((pieces) => pieces <= 0) && stock.every((units) => units >= -1e-6);
}
