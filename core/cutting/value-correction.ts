import { costOf, type Cover, type Use } from './cover.ts';
import { fillByValue } from './fill.ts';
import type { Rest } from './relaxation.ts';

/**
 * Fills again and again, each time giving the pieces that lay on poorly used stock more value, so that they are laid
 * earlier. Yields every answer.
 * Source: G. Belov and G. Scheithauer, INFORMS Journal on Computing 19 (2007) 27-35 (sequential value correction).
 * @param start item values to begin with, for instance lengths or dual values
 * @param times fills to make
 */
export function* fillWithCorrection<T>(
  cover: Cover<T>,
  rest: Rest,
  start: readonly number[],
  times: number,
): Generator<readonly Use<T>[]> {
  const values = start.slice();
  for (let time = 0; time < times; time++) {
    const uses = fillByValue(cover, rest, values);
    if (!uses) return;
    yield uses;
    const made = uses.reduce((sum, { column, count }) => sum + sizeIn(cover, column.pieces) * count, 0);
    const usual = costOf(uses) / made;
    for (const { column } of uses) {
      const dear = column.cost / sizeIn(cover, column.pieces) / usual;
      for (const [item] of column.pieces) {
        const target = (cover.sizes[item] as number) ** exponent * dear;
        values[item] = (1 - pace) * (values[item] as number) + pace * target;
      }
    }
  }
}

/** Above 1 favours the large pieces, which fit in fewest places. */
const exponent = 1.02;
const pace = 0.4;

const sizeIn = (cover: Cover, pieces: readonly (readonly [number, number])[]): number =>
  pieces.reduce((sum, [item, count]) => sum + count * (cover.sizes[item] as number), 0);
