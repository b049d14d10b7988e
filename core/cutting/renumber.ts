import type { SheetStack } from './replay.ts';
import { byDue, hundredth, type RunLine } from './run.ts';
import type { CutStep, Destination } from './step.ts';

/**
 * A list of steps put right after an edit, or for a run that has changed since: numbered from 1, as many pieces fed as lie
 * on the stack by then, what remains of a stack told at its last step, blanks counted and shared out to the lines, the most
 * urgent first; overruns last.
 */
export function relisted(
  steps: readonly CutStep[],
  sheets: readonly SheetStack[],
  lines: readonly RunLine[],
): CutStep[] {
  const restOf = rests(steps);
  const piles = new Map(sheets.map(({ id, count }) => [id, count]));
  const lay = (to: Destination, pieces: number): void => {
    if (to.kind === 'stack') piles.set(to.stack, (piles.get(to.stack) ?? 0) + pieces);
  };
  const share = sharing(lines);
  let blanksSoFar = 0;
  return steps.map((step, at): CutStep => {
    const fed = piles.get(step.stack) ?? 0;
    const rest = restOf.get(at) ?? null;
    piles.delete(step.stack);
    lay(step.to, fed * step.cutsEach);
    lay(rest ?? { kind: 'stack', stack: step.stack }, fed);
    const blanks = (step.to.kind === 'blank' ? fed * step.cutsEach : 0) + (rest?.kind === 'blank' ? fed : 0);
    blanksSoFar += blanks;
    const cut = share(step.to, fed * step.cutsEach);
    const left = rest ? share(rest, fed) : [];
    return { ...step, number: at + 1, fed, rest, lines: together([...cut, ...left]), blanks, blanksSoFar };
  });
}

/** What becomes of the rest of each stack, by the place of the stack's last step. */
function rests(steps: readonly CutStep[]): Map<number, Destination> {
  const told = new Map<string, Destination>();
  const lastOf = new Map<string, number>();
  steps.forEach(({ stack, rest }, at) => {
    if (rest) told.set(stack, rest);
    lastOf.set(stack, at);
  });
  return new Map([...lastOf].map(([stack, at]) => [at, told.get(stack) ?? { kind: 'scrap' }]));
}

type Lot = CutStep['lines'][number];

function sharing(lines: readonly RunLine[]): (to: Destination, pieces: number) => Lot[] {
  const urgent = lines.toSorted((a, b) => byDue(a.due, b.due));
  const wants = [
    ...urgent.map((line) => ({ line, left: line.quantity })),
    ...urgent.map((line) => ({ line, left: line.overrun })),
  ];
  return (to, pieces) => {
    if (to.kind !== 'blank') return [];
    let open = pieces;
    return wants.flatMap((want): Lot[] => {
      const fits =
        hundredth(want.line.girthMm) === to.girthMm && hundredth(want.line.lengthMm) === to.lengthMm;
      const given = fits ? Math.min(open, want.left) : 0;
      want.left -= given;
      open -= given;
      return given > 0 ? [{ line: want.line.id, pieces: given }] : [];
    });
  };
}

function together(lots: readonly Lot[]): Lot[] {
  const byLine = new Map<string, number>();
  for (const { line, pieces } of lots) byLine.set(line, (byLine.get(line) ?? 0) + pieces);
  return [...byLine].map(([line, pieces]) => ({ line, pieces }));
}
