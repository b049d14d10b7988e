import { cutUp, lay, layRest, type Piles } from './draw-steps.ts';
import type { Rect, SheetGroup } from './plan.ts';
import { placeOf, type ShearAtWork } from './replay.ts';
import type { CutStep } from './step.ts';

/** What a step does on one sheet of its group, in the places that the sheet had whole; millimetres. */
interface StepPlaces {
  /** The pieces that are fed. */
  readonly fed: readonly Rect[];
  /** What each cut takes off them. */
  readonly cuts: readonly Rect[];
}

/** Where on its sheet a step cuts. @param number the step's; one that is not in the list cuts nothing */
export function stepPlaces(
  { id, lengthMm, widthMm }: Pick<SheetGroup, 'id' | 'lengthMm' | 'widthMm'>,
  steps: readonly CutStep[],
  number: number,
  at: ShearAtWork,
): StepPlaces {
  const piles: Piles = new Map([[id, [{ x: 0, y: 0, w: lengthMm, h: widthMm }]]]);
  for (const step of steps) {
    const fed = piles.get(step.stack) ?? [];
    const cut = fed.map((piece) => cutUp(piece, step, at));
    if (step.number === number) return { fed, cuts: cut.flatMap(({ cuts }) => cuts) };
    piles.delete(step.stack);
    for (const { cuts, rest } of cut) {
      for (const piece of cuts) lay(piles, placeOf(step.to), piece);
      layRest(piles, step, rest);
    }
  }
  return { fed: [], cuts: [] };
}
