import { formatLength, type Units } from '../units/length.ts';
import type { CutStep, Destination } from './step.ts';
import { hundredth } from './run.ts';

/** Pieces of one size that lie in one place after the list has been cut. */
export interface MadePiece {
  /** "blank", "remnant", "scrap", or the stack on which they still lie. */
  readonly place: string;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly count: number;
}

/** Sheets as they are laid ready: one stack a group. */
export interface SheetStack {
  readonly id: string;
  readonly count: number;
  readonly widthMm: number;
  readonly lengthMm: number;
}

interface ShearFrame {
  readonly lengthMm: number;
  readonly backGaugeMm: { readonly min: number; readonly max: number };
  readonly minStripMm: number;
}

/** The shear, and what sentences about it are written in. */
export interface ShearAtWork {
  readonly shear: ShearFrame;
  readonly units: Units;
}

interface Replay {
  readonly pieces: readonly MadePiece[];
  /**
   * By step, what the hold-downs grip at its last cut: the least that remains in front of the blade on any piece of the stack.
   * What is cut off falls behind the blade, loose. null: nothing was cut.
   */
  readonly heldMm: readonly (number | null)[];
  /** Steps the shear cannot do, each with a sentence. */
  readonly refusals: readonly { readonly step: number; readonly message: string }[];
}

/** Less is not sheared but pushed aside: 1/16 in. Common practice, no source. Kept here as well, for nothing is shared. */
const THINNEST_CUT_MM = 1.5875;

/**
 * Cuts a step list on simulated sheets, cut by cut, and says what lies where at the end. It believes only the stack, the
 * axis, the size and the number of cuts of a step, measures every piece itself, and shares no code with the planning.
 */
export function replaySteps(
  steps: readonly CutStep[],
  sheets: readonly SheetStack[],
  at: ShearAtWork,
): Replay {
  const piles = new Map<string, MadePiece[]>();
  const refusals: Replay['refusals'][number][] = [];
  const heldMm: (number | null)[] = [];
  const lay = (place: string, widthMm: number, lengthMm: number, count: number): void => {
    const pile = piles.get(place) ?? [];
    const same = pile.find((one) => one.widthMm === widthMm && one.lengthMm === lengthMm);
    const rest = pile.filter((one) => one !== same);
    piles.set(place, [...rest, { place, widthMm, lengthMm, count: count + (same?.count ?? 0) }]);
  };
  for (const sheet of sheets) lay(sheet.id, sheet.widthMm, sheet.lengthMm, sheet.count);
  for (const step of steps) {
    const pile = piles.get(step.stack) ?? [];
    piles.delete(step.stack);
    let held: number | null = null;
    if (pile.length === 0)
      refusals.push({
        step: step.number,
        message: `Step ${step.number} finds nothing on stack ${step.stack}.`,
      });
    for (const piece of pile) {
      let { widthMm, lengthMm } = piece;
      for (let cut = 0; cut < step.cutsEach; cut++) {
        const message = cutRefusal(step, widthMm, lengthMm, at);
        if (message !== null) {
          refusals.push({ step: step.number, message });
          break;
        }
        if (step.axis === 'length') {
          lay(placeOf(step.to), widthMm, step.sizeMm, piece.count);
          lengthMm = hundredth(lengthMm - step.sizeMm);
        } else {
          lay(placeOf(step.to), step.sizeMm, lengthMm, piece.count);
          widthMm = hundredth(widthMm - step.sizeMm);
        }
        held = Math.min(held ?? Infinity, step.axis === 'length' ? lengthMm : widthMm);
      }
      lay(step.rest ? placeOf(step.rest) : step.stack, widthMm, lengthMm, piece.count);
    }
    heldMm.push(held);
  }
  return { pieces: [...piles.values()].flat(), heldMm, refusals };
}

/** Where a piece lies that goes to a destination: a stack, or "blank", "remnant", "scrap". */
export const placeOf = (to: Destination): string => (to.kind === 'stack' ? to.stack : to.kind);

/** Why the shear cannot make a step's cut on a piece; null: it can. */
export function cutRefusal(
  step: CutStep,
  widthMm: number,
  lengthMm: number,
  { shear, units }: ShearAtWork,
): string | null {
  const size = (mm: number): string => formatLength(mm, units);
  const [along, across] = step.axis === 'length' ? [lengthMm, widthMm] : [widthMm, lengthMm];
  const remains = hundredth(along - step.sizeMm);
  const say = (limit: string): string =>
    `Step ${step.number}, ${size(step.sizeMm)} off a piece ${size(widthMm)} wide and ${size(lengthMm)} long, ${limit}.`;
  if (across > shear.lengthMm) return say(`needs a shear longer than ${size(shear.lengthMm)}`);
  if (remains <= 0) return say('takes more than there is');
  if (step.sizeMm < THINNEST_CUT_MM) return say(`is thinner than a shear cuts off, ${size(THINNEST_CUT_MM)}`);
  if (remains < shear.minStripMm)
    return say(`leaves ${size(remains)}, less than the ${size(shear.minStripMm)} the hold-downs grip`);
  const gauge = step.backGaugeMm;
  if (gauge !== null && Math.abs(gauge - step.sizeMm) > 0.005)
    return say(`does not agree with its back gauge of ${size(gauge)}`);
  const { min, max } = shear.backGaugeMm;
  if (gauge !== null && (gauge < min || gauge > max))
    return say(`is beyond the back gauge, ${size(min)} to ${size(max)}`);
  return null;
}
