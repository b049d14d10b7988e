import { mulberry32 } from '../../../demo-data/make/rng.ts';
import { type Day, iso, later } from '../foreign-files/meant.ts';

/** Order lines of an invented customer's list, before they are written down in its own way. */
export interface ListLine {
  readonly order: string;
  readonly customer: string;
  readonly part: string;
  readonly quantity: number;
  readonly gauge: string;
  readonly colour: string;
  /** In the list's own steps: tenths of a millimetre, sixteenths of an inch. */
  readonly length: number;
  readonly due: Day;
  readonly note: string;
}

export interface ListPlan {
  readonly seed: number;
  readonly lines: number;
  readonly orderNumber: (count: number) => string;
  readonly customers: readonly string[];
  readonly parts: readonly string[];
  readonly colours: readonly string[];
  readonly lengths: readonly number[];
  readonly notes: readonly string[];
}

/** The Monday on which the lists arrive. */
const TODAY: Day = { year: 2026, month: 11, day: 30 };

/** The same lines every time. An order's lines have one customer and one due date, on a working day of the next weeks. */
export function listLines(plan: ListPlan): ListLine[] {
  const rng = mulberry32(plan.seed);
  const lines: ListLine[] = [];
  for (let count = 0; lines.length < plan.lines; count++) {
    const order = plan.orderNumber(count);
    const customer = rng.pick(plan.customers);
    const due = later(TODAY, 7 * rng.whole(0, 7) + rng.whole(2, 4));
    const note = rng.chance(0.15) ? rng.pick(plan.notes) : '';
    for (let k = rng.whole(2, 5); k > 0 && lines.length < plan.lines; k--)
      lines.push({
        order,
        customer,
        part: rng.pick(plan.parts),
        quantity: rng.chance(0.015) ? rng.pick([1200, 1450]) : 2 * rng.whole(2, 15),
        gauge: rng.pick(['24', '26']),
        colour: rng.pick(plan.colours),
        length: rng.pick(plan.lengths),
        due,
        note,
      });
  }
  return lines;
}

/** A cell that somebody got wrong, by the line it stands in (from 0). */
export interface Slip<Cell> {
  readonly line: number;
  readonly column: string;
  readonly cell: Cell;
  readonly why: string;
}

/** One row of a file, as it should be understood. */
export type TruthRow =
  | { readonly row: number; readonly means: Readonly<Record<string, string | number>> }
  | {
      readonly row: number;
      readonly wrong: { readonly column: string; readonly text: string; readonly why: string };
    };

/** @param stepMm what a list's length is counted in @param slip the row's mistake, if it has one */
export function truthRow(row: number, line: ListLine, stepMm: number, slip?: Slip<unknown>): TruthRow {
  if (slip) return { row, wrong: { column: slip.column, text: String(slip.cell), why: slip.why } };
  const { length, due, ...same } = line;
  return { row, means: { ...same, lengthMm: Math.round(length * stepMm * 1e4) / 1e4, due: iso(due) } };
}
