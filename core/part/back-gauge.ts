import type { BendOrder } from './bend-order.ts';
import { actsOf, chainOf } from './bend-steps.ts';
import type { Forming } from './forming.ts';
import type { Profile } from './profile.ts';
import { isFold, stripOf, type Piece } from './strip.ts';

/** What lies at the back gauge at a step of the brake. */
export interface Gauged {
  /** "flange 2", or "the hem’s lip". */
  readonly what: string;
  /** From the middle of the fold to what touches the stops; null: it slants there, or nothing is gauged. */
  readonly mm: number | null;
}

/**
 * What lies at the back gauge at each step of an order, and how far the stops stand behind the bend line: the flat metal
 * from the middle of the fold to the edge, folds that are still flat with their allowance; or to the outside of the first
 * fold that is bent by 90° or more, its inside radius and the thickness beyond its tangent. Over a fold bent by less the
 * flange slants on, and no figure is given. Plane geometry of the strip that the blank is cut by (its K-factor or measured
 * deductions), so it is as true as the blank; common practice, no source.
 * @returns one a step, in the order's order
 */
export function gaugedAt({ steps }: BendOrder, profile: Profile, forming: Forming): Gauged[] {
  const strip = stripOf(profile, forming);
  const pieces = strip.ok ? strip.value : [];
  const folds = pieces.flatMap((piece, i) => (isFold(piece) ? [i] : []));
  const acts = actsOf(chainOf(profile));
  const angles = new Map<number, number>();
  return steps.map(({ step, back }) => {
    const act = acts.find((one) => one.step === step);
    const at = act ? folds[act.joint] : undefined;
    if (!act || at === undefined) return { what: '', mm: null };
    const towards = back === 'start' ? -1 : 1;
    const gauged =
      act.from > 0
        ? { what: '', mm: null }
        : { what: nameOf(pieces[at + towards]), mm: reach(pieces, angles, at, towards) };
    angles.set(at, act.to);
    return gauged;
  });
}

const nameOf = (piece: Piece | undefined): string =>
  piece?.kind === 'lip' ? 'the hem’s lip' : piece ? `flange ${piece.number}` : '';

function reach(
  pieces: readonly Piece[],
  angles: ReadonlyMap<number, number>,
  at: number,
  towards: 1 | -1,
): number | null {
  let mm = (pieces[at]?.lengthMm ?? 0) / 2;
  for (let i = at + towards; i >= 0 && i < pieces.length; i += towards) {
    const piece = pieces[i]!;
    const angle = angles.get(i) ?? 0;
    if (!isFold(piece) || angle === 0) mm += piece.lengthMm;
    else if (angle >= 90) return mm + piece.shape.radius + piece.shape.thickness;
    else return null;
  }
  return mm;
}
