import type { Profile } from '../../../../core/part/profile.ts';
import { withoutKey } from '../../../form/list.ts';

type BendShape = Profile['bends'][number];
type HemShape = NonNullable<Profile['startHem']>;

/** A bend as most are: a square corner, up, with the radius the die makes. */
const squareBend: BendShape = { angle: 90, direction: 'up', radiusMm: null };

/** One more flange at the end, behind a square bend; its length is still to be typed. */
export const addFlange = (profile: Profile): Profile => ({
  ...profile,
  flangesMm: [...profile.flangesMm, NaN],
  bends: profile.flangesMm.length === 0 ? [] : [...profile.bends, squareBend],
});

/** Without a flange and the bend before it (after it, for the first). The last flange stays. */
export function removeFlange(profile: Profile, at: number): Profile {
  if (profile.flangesMm.length <= 1) return profile;
  const bend = Math.max(0, at - 1);
  return {
    ...profile,
    flangesMm: profile.flangesMm.filter((_, i) => i !== at),
    bends: profile.bends.filter((_, i) => i !== bend),
  };
}

export const withFlange = (profile: Profile, at: number, lengthMm: number): Profile => ({
  ...profile,
  flangesMm: profile.flangesMm.map((old, i) => (i === at ? lengthMm : old)),
});

export const withBend = (profile: Profile, at: number, patch: Partial<BendShape>): Profile => ({
  ...profile,
  bends: profile.bends.map((old, i) => (i === at ? { ...old, ...patch } : old)),
});

/** A hem on an edge: null takes it away; a new one is folded up, its length still to be typed; a closed one has no gap. */
export function withHem(
  profile: Profile,
  edge: 'startHem' | 'endHem',
  kind: HemShape['kind'] | null,
): Profile {
  const old = profile[edge] ?? { lengthMm: NaN, direction: 'up' };
  const hem = kind === null ? null : { ...old, kind };
  return { ...profile, [edge]: hem?.kind === 'closed' ? withGap(hem, null) : hem };
}

/** The clear space in a hem; null: one thickness. */
export const withGap = (hem: HemShape, gapMm: number | null): HemShape =>
  gapMm === null ? withoutKey(hem, 'gapMm') : { ...hem, gapMm };

/** A kick at the end: half an inch turned by 30° (common practice, no source); both can be typed over. */
export const addKick = (profile: Profile): Profile => ({
  ...profile,
  flangesMm: [...profile.flangesMm, 12.7],
  bends: [...profile.bends, { angle: 30, direction: 'up', radiusMm: null }],
});

/** Left for right: the same piece read from its other edge. */
export const mirrored = (profile: Profile): Profile => ({
  ...profile,
  flangesMm: profile.flangesMm.toReversed(),
  bends: profile.bends.toReversed(),
  startHem: profile.endHem,
  endHem: profile.startHem,
});

const other = <T extends { readonly direction: 'up' | 'down' }>(fold: T): T => ({
  ...fold,
  direction: fold.direction === 'up' ? 'down' : 'up',
});

/** Up for down: every bend and hem turns the other way, and the paint is on the other side: the same piece from below. */
export const turnedOver = (profile: Profile): Profile => ({
  ...profile,
  bends: profile.bends.map(other),
  startHem: profile.startHem && other(profile.startHem),
  endHem: profile.endHem && other(profile.endHem),
  paintedSide: profile.paintedSide === 'up' ? 'down' : 'up',
});
