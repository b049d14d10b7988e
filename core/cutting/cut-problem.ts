import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { faultOf, isTakenWord } from '../input-limits.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';

const id = z
  .string()
  .min(1)
  .max(120)
  .refine((text) => !isTakenWord(text), 'this word cannot be a name');
/** Of a file that is wrong all over, so many places are told. */
const MOST_TOLD = 20;

const stockPiece = z.object({
  id,
  length: z.number().positive(),
  /** How many there are; null: as many as needed. */
  available: z.int().min(0).nullable().default(null),
  cost: z.number().min(0).default(1),
});

const wantedPiece = z.object({ id, length: z.number().positive(), quantity: z.int().min(0).max(1_000_000) });

/** A one-dimensional cutting problem, file format `cut-problem/1`. Unknown fields are ignored. Any one unit of length. */
const cutProblem = z.object({
  format: z.literal('cut-problem/1'),
  name: z.string().min(1),
  stock: z.array(stockPiece).min(1, 'needs at least one stock length'),
  items: z.array(wantedPiece),
  /** Taken off every stock piece once, for a square end. */
  trim: z.number().min(0).default(0),
  bestKnown: z.number().nullable().default(null),
  bestKnownIsOptimal: z.boolean().default(false),
});
export type CutProblem = DeepReadonly<z.infer<typeof cutProblem>>;

/** How often one way of cutting one stock piece is used. */
export interface CutPattern {
  readonly stock: string;
  readonly count: number;
  /** Item id → pieces from one stock piece. */
  readonly items: Readonly<Record<string, number>>;
}

export interface CutResult {
  readonly name: string;
  /** Σ cost of the stock pieces used. */
  readonly objective: number;
  readonly patterns: readonly CutPattern[];
}

const repeated = (ids: readonly string[]): string | undefined =>
  ids.find((one, at) => ids.indexOf(one) !== at);

/**
 * Reads a `cut-problem/1` value, for instance parsed JSON.
 * @returns the problem, or what is wrong: a field out of range, an id twice, an item longer than any stock piece
 */
export function readCutProblem(value: unknown): Result<CutProblem> {
  const fault = faultOf(value, { values: Infinity });
  if (fault)
    return err(
      issue('cut problem', '', `The file cannot be read: ${fault}.`, 'Correct it and read the file again.'),
    );
  const read = cutProblem.safeParse(value);
  if (!read.success) {
    const issues = read.error.issues.slice(0, MOST_TOLD).map(({ path, message }) => {
      const field = path.join('.') || 'file';
      return issue(
        'cut problem',
        field,
        `The field ${field} cannot be read: ${message}.`,
        'Correct it and read the file again.',
      );
    });
    return err(...issues);
  }
  const found = contradictions(read.data);
  return found.length > 0 ? err(...found) : ok(read.data);
}

function contradictions(given: CutProblem): Issue[] {
  const found: Issue[] = [];
  for (const [field, list] of [
    ['stock', given.stock],
    ['items', given.items],
  ] as const) {
    const twice = repeated(list.map((one) => one.id));
    if (twice !== undefined) {
      found.push(
        issue(
          `${field} ${twice}`,
          'id',
          `The id ${twice} is given twice in ${field}.`,
          'Give every entry an id of its own.',
        ),
      );
    }
  }
  const longest = Math.max(...given.stock.map((piece) => piece.length)) - given.trim;
  for (const item of given.items) {
    if (item.quantity === 0 || item.length <= longest) continue;
    const limit = `The longest stock piece leaves ${longest} after the trim cut; item ${item.id} is ${item.length} long.`;
    found.push(issue(`item ${item.id}`, 'length', limit, 'Add longer stock or make the item in two pieces.'));
  }
  return found;
}
