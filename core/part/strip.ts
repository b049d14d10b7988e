import type { Hem, Profile } from '../shop/part.ts';
import { bad, good, problem, type Problem, type Result } from '../shop/result.ts';
import { formatBoth } from '../units/length.ts';
import { bendAllowance, setback, type BendShape } from './bend.ts';
import { hemShape } from './hem.ts';
import { defaultRadiusMm } from './radius.ts';

/** What turns a drawn profile into a strip of metal. */
export interface Forming {
  readonly thicknessMm: number;
  readonly kFactor: number;
  /** Inside radius for bends that name none; left out: one thickness. */
  readonly radiusMm?: number;
}

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
  readonly shape: BendShape;
  readonly lengthMm: number;
}

export type Piece = Flat | Fold;

const fold = (kind: Fold['kind'], number: number, direction: Fold['direction'], shape: BendShape): Fold => ({
  kind,
  number,
  direction,
  shape,
  lengthMm: bendAllowance(shape),
});

/** Bend `i` of the profile with its radius settled. */
export function bendShapes(profile: Profile, forming: Forming): BendShape[] {
  const open = forming.radiusMm ?? defaultRadiusMm(forming.thicknessMm);
  return profile.bends.map(({ angle, radiusMm }) => ({
    angle,
    radius: radiusMm ?? open,
    thickness: forming.thicknessMm,
    kFactor: forming.kFactor,
  }));
}

/** A hemmed edge is measured over the outside of its fold, however the bends are measured. */
const hemSetback = (hem: Hem | null, forming: Forming): number =>
  hem === null ? 0 : hemShape(hem.kind, forming.thicknessMm, forming.kFactor).radius + forming.thicknessMm;

const tooShort = (what: string, field: string, lengthMm: number, needsMm: number): Problem =>
  problem(
    'profile',
    field,
    `${what} is ${formatBoth(lengthMm)} long, but its bends alone take ${formatBoth(needsMm)} of it.`,
    'Make it longer, or the bend radius smaller.',
  );

function lip(hem: Hem, flange: number, forming: Forming, problems: Problem[]): Flat {
  const back = hemSetback(hem, forming);
  if (hem.lengthMm < back) problems.push(tooShort(`The hem on flange ${flange}`, 'hem', hem.lengthMm, back));
  return { kind: 'lip', number: flange, lengthMm: hem.lengthMm - back };
}

/**
 * A profile as the strip it is made of, from edge to edge: flats and arcs in order, hem lips included. The girth, the
 * drawing and the limits all read this one list; its lengths add up to the computed girth.
 * @returns pieces of 0 mm or more; or a problem for each flange or lip that its bends leave nothing of
 */
export function stripOf(profile: Profile, forming: Forming): Result<Piece[]> {
  const shapes = bendShapes(profile, forming);
  const backs = shapes.map((shape) => setback(profile.measured, shape));
  const last = profile.flangesMm.length - 1;
  const problems: Problem[] = [];
  const pieces: Piece[] = [];
  const hem = ({ kind, direction }: Hem, number: number): Fold =>
    fold('hem', number, direction, hemShape(kind, forming.thicknessMm, forming.kFactor));

  if (profile.startHem) pieces.push(lip(profile.startHem, 1, forming, problems), hem(profile.startHem, 1));
  profile.flangesMm.forEach((lengthMm, i) => {
    const before = i === 0 ? hemSetback(profile.startHem, forming) : (backs[i - 1] ?? 0);
    const after = i === last ? hemSetback(profile.endHem, forming) : (backs[i] ?? 0);
    const needs = before + after;
    if (lengthMm < needs) problems.push(tooShort(`Flange ${i + 1}`, 'flangesMm', lengthMm, needs));
    pieces.push({ kind: 'flange', number: i + 1, lengthMm: lengthMm - needs });
    const bend = profile.bends[i];
    const shape = shapes[i];
    if (bend && shape) pieces.push(fold('bend', i + 1, bend.direction, shape));
  });
  if (profile.endHem) {
    pieces.push(hem(profile.endHem, last + 1), lip(profile.endHem, last + 1, forming, problems));
  }
  return problems.length > 0 ? bad(...problems) : good(pieces);
}
