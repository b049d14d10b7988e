import type { Offcut, PlacedBlank, Rect, SheetGroup } from './plan.ts';
import { cutRefusal, placeOf, type ShearAtWork } from './replay.ts';
import { blankSizes, hundredth, type RunInput } from './run.ts';
import type { CutStep } from './step.ts';

/** Piles on a sheet's own bed: the pieces of one sheet with the places they had in it, by where they lie now. */
export type Piles = Map<string, Rect[]>;

/**
 * One sheet of a group drawn as a step list cuts it, cut by cut: the drawing of a list that a person changed. What still
 * lies on a stack at the end is `left`; a cut that the shear cannot make is not made, as in the replay.
 */
export function drawSteps(
  group: SheetGroup,
  steps: readonly CutStep[],
  run: RunInput,
): Pick<SheetGroup, 'blanks' | 'offcuts'> {
  const piles: Piles = new Map([[group.id, [{ x: 0, y: 0, w: group.lengthMm, h: group.widthMm }]]]);
  const trims: Rect[] = [];
  for (const step of steps) {
    const pile = piles.get(step.stack) ?? [];
    piles.delete(step.stack);
    for (const piece of pile) {
      const { cuts, rest } = cutUp(piece, step, run);
      for (const cut of cuts) {
        if (isTrim(cut, step, run, group)) trims.push(cut);
        else lay(piles, placeOf(step.to), cut);
      }
      layRest(piles, step, rest);
    }
  }
  return drawn(piles, trims, run);
}

/** What remains of a piece goes where the step says, or back on its stack. */
export const layRest = (piles: Piles, step: CutStep, rest: Rect): void =>
  lay(piles, step.rest ? placeOf(step.rest) : step.stack, rest);

export function lay(piles: Piles, place: string, piece: Rect): void {
  piles.set(place, [...(piles.get(place) ?? []), piece]);
}

/** One piece cut as a step says, as far as the shear can. */
export function cutUp(piece: Rect, step: CutStep, run: ShearAtWork): { cuts: Rect[]; rest: Rect } {
  const cuts: Rect[] = [];
  const { sizeMm: size } = step;
  let { x, y, w, h } = piece;
  for (let cut = 0; cut < step.cutsEach && cutRefusal(step, h, w, run) === null; cut++) {
    if (step.axis === 'length') {
      cuts.push({ x, y, w: size, h });
      [x, w] = [hundredth(x + size), hundredth(w - size)];
    } else {
      cuts.push({ x, y, w, h: size });
      [y, h] = [hundredth(y + size), hundredth(h - size)];
    }
  }
  return { cuts, rest: { x, y, w, h } };
}

/** A cut to scrap as wide as the trim that squares an edge of the stock; off a whole sheet what all panels have to lose goes with it. */
function isTrim({ x, y, w }: Rect, step: CutStep, { stock }: RunInput, group: SheetGroup): boolean {
  const from = stock.find((s) => s.id === group.stockId);
  if (!from || step.to.kind !== 'scrap') return false;
  return step.axis === 'length'
    ? step.sizeMm === from.endTrimMm && x === 0
    : step.sizeMm === from.sideTrimMm || (from.sideTrimMm > 0 && y === 0 && w === group.lengthMm);
}

function drawn(piles: Piles, trims: readonly Rect[], run: RunInput): Pick<SheetGroup, 'blanks' | 'offcuts'> {
  const sizes = blankSizes(run);
  const linesOf = ({ w, h }: Rect): string[] =>
    sizes.find((s) => s.lengthMm === w && s.girthMm === h)?.lines.map((line) => line.id) ?? [];
  const blanks: PlacedBlank[] = (piles.get('blank') ?? []).map((r) => ({ ...r, lines: linesOf(r) }));
  const offcuts = [...piles].flatMap(([place, pieces]): Offcut[] => {
    if (place === 'blank') return [];
    const kind = place === 'remnant' || place === 'scrap' ? place : 'left';
    return pieces.map((piece) => ({ ...piece, kind }));
  });
  return { blanks, offcuts: [...trims.map((r): Offcut => ({ ...r, kind: 'trim' })), ...offcuts] };
}
