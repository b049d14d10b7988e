import type { SheetGroup } from '../cutting/plan.ts';
import { hundredth, type RunLine } from '../cutting/run.ts';
import type { CutStep, Destination } from '../cutting/step.ts';
import type { CutList } from '../shop/stock.ts';

/**
 * A list of steps put right after an edit: numbered from 1, what remains of a stack told at its last step, blanks counted
 * and shared out anew to the lines, the most urgent first.
 */
export function relisted(steps: readonly CutStep[], lines: readonly RunLine[]): CutStep[] {
  const rests = new Map<string, Destination>();
  const lastOf = new Map<string, number>();
  steps.forEach(({ stack, rest }, at) => {
    if (rest) rests.set(stack, rest);
    lastOf.set(stack, at);
  });
  const share = sharing(lines);
  let blanksSoFar = 0;
  return steps.map((step, at): CutStep => {
    const rest = lastOf.get(step.stack) === at ? (rests.get(step.stack) ?? { kind: 'scrap' }) : null;
    const cut = share(step.to, step.fed * step.cutsEach);
    const left = rest ? share(rest, step.fed) : [];
    const blanks =
      (step.to.kind === 'blank' ? step.fed * step.cutsEach : 0) + (rest?.kind === 'blank' ? step.fed : 0);
    blanksSoFar += blanks;
    return { ...step, number: at + 1, rest, lines: together([...cut, ...left]), blanks, blanksSoFar };
  });
}

type Lot = CutStep['lines'][number];

function sharing(lines: readonly RunLine[]): (to: Destination, pieces: number) => Lot[] {
  const wants = lines
    .toSorted((a, b) => (a.due ?? Infinity) - (b.due ?? Infinity))
    .map((line) => ({ line, left: line.quantity + line.overrun }));
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

/** Steps with the one at `from` put so that `to` steps stand before it. */
export function moveStep(steps: readonly CutStep[], from: number, to: number): CutStep[] {
  const step = steps[from];
  if (!step) return [...steps];
  const others = steps.filter((_, at) => at !== from);
  return [...others.slice(0, to), step, ...others.slice(to)];
}

/** A changed list as it is kept. */
export const cutListOf = (
  runId: string,
  lines: readonly string[],
  groups: readonly SheetGroup[],
  steps: readonly CutStep[],
  revision: number,
): CutList => ({
  id: runId,
  lines: [...lines],
  groups: groups.map((group) => ({
    ...group,
    blanks: group.blanks.map((blank) => ({ ...blank, lines: [...blank.lines] })),
    offcuts: [...group.offcuts],
  })),
  steps: steps.map((step) => ({ ...step, lines: [...step.lines] })),
  revision,
});
