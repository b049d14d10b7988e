import type { Hem, Profile } from './profile.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import { formatLength, type Units } from '../units/length.ts';
import { bendAllowance, kFactorFromTest, setback, type BendShape } from './bend.ts';
import { measuredFor, type Forming } from './forming.ts';
import { hemShape, type HemFold } from './hem.ts';
import { defaultRadiusMm } from './radius.ts';

/** The straight part of a flange or of a hem's lip, tangent to tangent. */
export interface Flat {
  readonly kind: 'flange' | 'lip';
  /** Flange 1, 2 … in order; a lip has the number of the flange it folds over. */
  readonly number: number;
  readonly lengthMm: number;
}

/** A bend or a hem's fold: an arc of the neutral line. */
export interface Fold {
  readonly kind: 'bend' | 'hem';
  readonly number: number;
  readonly direction: 'up' | 'down';
  readonly shape: FoldShape;
  readonly lengthMm: number;
}

export type Piece = Flat | Fold;

export const isFold = (piece: Piece | undefined): piece is Fold =>
  piece?.kind === 'bend' || piece?.kind === 'hem';

/** A fold with its figures settled; `kFactor` is the one implied where the shop's own deduction decides. */
export interface FoldShape extends BendShape {
  /** The shop's own deduction; null: by the formula. */
  readonly measuredMm: number | null;
}

const fold = (kind: Fold['kind'], number: number, direction: Fold['direction'], shape: FoldShape): Fold => ({
  kind,
  number,
  direction,
  shape,
  lengthMm: bendAllowance(shape),
});

/**
 * The fold as the shop's own test pieces came out: twice the outside setback less the deduction is the metal it takes,
 * and the K-factor is the one that makes the formula say so. Girth, drawing and limits then need no second rule.
 */
function asMeasured(shape: BendShape, deductionMm: number | null): FoldShape {
  if (deductionMm === null) return { ...shape, measuredMm: null };
  const blank = 2 * setback('outside', shape) - deductionMm;
  return { ...shape, kFactor: kFactorFromTest({ ...shape, blank, flats: 0 }), measuredMm: deductionMm };
}

/** Bend `i` of the profile with its radius settled. Measured deductions hold where the radius is left to the die. */
export function bendShapes(profile: Profile, forming: Forming): FoldShape[] {
  const open = forming.radiusMm ?? defaultRadiusMm(forming.thicknessMm);
  return profile.bends.map(({ angle, radiusMm }) =>
    asMeasured(
      { angle, radius: radiusMm ?? open, thickness: forming.thicknessMm, kFactor: forming.kFactor },
      radiusMm === null ? measuredFor(forming, angle) : null,
    ),
  );
}

/** A hem's fold with its figures settled; a measured deduction of 180° is that of a closed hem. */
export const hemFold = (hem: HemFold, forming: Forming): FoldShape =>
  asMeasured(
    hemShape(hem, forming.thicknessMm, forming.kFactor),
    hem.kind === 'closed' ? measuredFor(forming, 180) : null,
  );

/** A hemmed edge is measured over the outside of its fold, however the bends are measured. */
const hemSetback = (hem: Hem | null, forming: Forming): number =>
  hem === null ? 0 : hemShape(hem, forming.thicknessMm, forming.kFactor).radius + forming.thicknessMm;

const tooShort = (what: string, field: string, [lengthMm, needsMm]: [number, number], units: Units): Issue =>
  issue(
    'profile',
    field,
    `${what} is ${formatLength(lengthMm, units)} long, but its bends alone take ${formatLength(needsMm, units)} of it.`,
    'Make it longer, or the bend radius smaller.',
  );

/** A deduction that leaves a fold no metal was typed wrong. */
const tooMuch = (what: string, { measuredMm, ...shape }: FoldShape, units: Units): Issue =>
  issue(
    'profile',
    'deduction',
    `${what} would take no metal: your measured deduction of ${formatLength(measuredMm ?? 0, units)} is more than the ${formatLength(2 * setback('outside', shape), units)} that its flanges overlap.`,
    'Correct it in Shop, Materials.',
  );

/** The lip of a teardrop turns by a square corner more than a full fold at most, so its straight part is one radius at least. */
function lip(hem: Hem, flange: number, forming: Forming, issues: Issue[]): Flat {
  const back = hemSetback(hem, forming);
  const least = hem.kind === 'teardrop' ? 2 * back - forming.thicknessMm : back;
  if (hem.lengthMm < least)
    issues.push(tooShort(`The hem on flange ${flange}`, 'hem', [hem.lengthMm, least], forming.units));
  return { kind: 'lip', number: flange, lengthMm: hem.lengthMm - back };
}

/** The edge of a teardrop must meet the straight part of its flange, as far from the fold as its own straight part is long. */
function missed(hem: Hem | null, flange: Flat, forming: Forming): Issue[] {
  if (hem?.kind !== 'teardrop') return [];
  const straightMm = hem.lengthMm - hemSetback(hem, forming);
  if (straightMm <= flange.lengthMm) return [];
  const [lipWords, flatWords] = [straightMm, Math.max(0, flange.lengthMm)].map((mm) =>
    formatLength(mm, forming.units),
  );
  return [
    issue(
      'profile',
      'hem',
      `The edge of the teardrop hem would miss flange ${flange.number}: the lip is ${lipWords} long beyond its fold, the flange is straight for ${flatWords}.`,
      'Make the lip shorter, or the flange longer.',
    ),
  ];
}

/**
 * A profile as the strip it is made of, from edge to edge: flats and arcs in order, hem lips included. The girth, the
 * drawing and the limits all read this one list; its lengths add up to the computed girth.
 * @returns pieces of 0 mm or more; or a problem for each flange or lip that its bends leave nothing of, and for each
 * measured deduction that leaves its fold nothing
 */
export function stripOf(profile: Profile, forming: Forming): Result<Piece[]> {
  const shapes = bendShapes(profile, forming);
  const backs = shapes.map((shape) => setback(profile.measured, shape));
  const last = profile.flangesMm.length - 1;
  const issues: Issue[] = [];
  const pieces: Piece[] = [];
  const hem = (of: Hem, number: number): Fold => fold('hem', number, of.direction, hemFold(of, forming));

  if (profile.startHem) pieces.push(lip(profile.startHem, 1, forming, issues), hem(profile.startHem, 1));
  profile.flangesMm.forEach((lengthMm, i) => {
    const before = i === 0 ? hemSetback(profile.startHem, forming) : (backs[i - 1] ?? 0);
    const after = i === last ? hemSetback(profile.endHem, forming) : (backs[i] ?? 0);
    const needs = before + after;
    if (lengthMm < needs)
      issues.push(tooShort(`Flange ${i + 1}`, 'flangesMm', [lengthMm, needs], forming.units));
    const flange: Flat = { kind: 'flange', number: i + 1, lengthMm: lengthMm - needs };
    if (i === 0) issues.push(...missed(profile.startHem, flange, forming));
    if (i === last) issues.push(...missed(profile.endHem, flange, forming));
    pieces.push(flange);
    const bend = profile.bends[i];
    const shape = shapes[i];
    if (bend && shape) pieces.push(fold('bend', i + 1, bend.direction, shape));
  });
  if (profile.endHem) {
    pieces.push(hem(profile.endHem, last + 1), lip(profile.endHem, last + 1, forming, issues));
  }
  for (const piece of pieces) {
    if (!isFold(piece) || piece.lengthMm > 0) continue;
    const what = piece.kind === 'bend' ? `Bend ${piece.number}` : 'A closed hem';
    issues.push(tooMuch(what, piece.shape, forming.units));
  }
  return issues.length > 0 ? err(...issues) : ok(pieces);
}
