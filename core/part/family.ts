import type { Profile } from './profile.ts';
import type { Family, Part } from './part.ts';

export type Pattern = Extract<Family, { is: 'pattern' }>;
type Size = Pattern['sizes'][number];

/** The pattern's profile with the named dimensions set; every other length, bend and hem stays. Lengths in the dimensions' order. */
function sizedProfile(
  profile: Profile,
  dimensions: Pattern['dimensions'],
  lengthsMm: readonly number[],
): Profile {
  const flangesMm = [...profile.flangesMm];
  dimensions.forEach(({ flanges }, i) => {
    for (const flange of flanges) flangesMm[flange - 1] = lengthsMm[i] ?? NaN;
  });
  return { ...profile, flangesMm };
}

/**
 * A size of a family as its pattern makes it. A size that exists keeps its own usual length and note; a new one begins
 * with the pattern's length.
 */
export const sizeOf = (pattern: Part, family: Pattern, size: Size, current: Part | null): Part => ({
  id: size.partId,
  name: size.name,
  profile: sizedProfile(pattern.profile, family.dimensions, size.lengthsMm),
  lengthMm: current?.lengthMm ?? pattern.lengthMm,
  bendOrder: pattern.bendOrder,
  family: { is: 'size', of: pattern.id },
  extraBlanks: pattern.extraBlanks,
  steps: pattern.steps,
  note: current?.note ?? '',
  revision: current?.revision ?? 0,
});
