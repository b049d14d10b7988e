import { letters } from './groups.ts';
import type { CutStep, Destination } from './step.ts';

type Sheets = readonly { readonly id: string }[];

const stackIn = (to: Destination | null): string[] => (to?.kind === 'stack' ? [to.stack] : []);

/**
 * Every stack that a step can be fed from: sheets, what steps are fed from, and what steps lay down, so that pieces that no
 * step takes up any more can be taken up again.
 */
export const stacksOf = (sheets: Sheets, steps: readonly CutStep[]): string[] => [
  ...new Set([
    ...sheets.map(({ id }) => id),
    ...steps.flatMap(({ stack, to, rest }) => [stack, ...stackIn(to), ...stackIn(rest)]),
  ]),
];

/** The kind of sheet that a stack is cut from; a stack that nothing is known of is a sheet of its own name. */
export function groupOfStack(sheets: Sheets, steps: readonly CutStep[], stack: string): string {
  if (sheets.some(({ id }) => id === stack)) return stack;
  const step = steps.find((one) => [one.stack, ...stackIn(one.to), ...stackIn(one.rest)].includes(stack));
  return step?.group ?? stack;
}

/** A name that no stack has yet, for pieces cut from one: "A4" beside A1 to A3. */
export function newStack(sheets: Sheets, steps: readonly CutStep[], from: string): string {
  const known = stacksOf(sheets, steps);
  const group = groupOfStack(sheets, steps, from);
  for (let n = 1; ; n++) if (!known.includes(`${group}${n}`)) return `${group}${n}`;
}

/** The letter of the next kind of sheet. */
export function newGroup(sheets: Sheets): string {
  for (let n = 0; ; n++) if (!sheets.some(({ id }) => id === letters(n))) return letters(n);
}
