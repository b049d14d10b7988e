import type { Pattern } from '../../../../core/part/family.ts';
import type { Profile } from '../../../../core/part/profile.ts';
import type { Part } from '../../../../core/part/part.ts';
import { without, withEntry } from '../../../form/list.ts';

/** A family begins with one dimension, the longest flange, and no other size. */
export function freshFamily({ flangesMm }: Profile): Pattern {
  const longest = flangesMm.reduce((at, mm, i) => (mm > (flangesMm[at] ?? 0) ? i : at), 0);
  return { is: 'pattern', dimensions: [{ name: 'A', flanges: [longest + 1] }], sizes: [] };
}

/** The length that a dimension has on the pattern itself: its first flange's. */
export const ownLength = ({ flangesMm }: Profile, flanges: readonly number[]): number =>
  flangesMm[(flanges[0] ?? 0) - 1] ?? NaN;

/** One more dimension, of no flange yet; every size begins with a length to be typed. */
export const addDimension = (family: Pattern): Pattern => ({
  ...family,
  dimensions: [
    ...family.dimensions,
    { name: String.fromCharCode(65 + family.dimensions.length), flanges: [] },
  ],
  sizes: family.sizes.map((size) => ({ ...size, lengthsMm: [...size.lengthsMm, NaN] })),
});

export const removeDimension = (family: Pattern, at: number): Pattern => ({
  ...family,
  dimensions: without(family.dimensions, at),
  sizes: family.sizes.map((size) => ({ ...size, lengthsMm: without(size.lengthsMm, at) })),
});

/** A flange in or out of a dimension; in, it leaves any other. */
export const toggleFlange = (family: Pattern, at: number, flange: number): Pattern => ({
  ...family,
  dimensions: family.dimensions.map((dimension, i) => {
    const rest = dimension.flanges.filter((f) => f !== flange);
    const joins = i === at && rest.length === dimension.flanges.length;
    return { ...dimension, flanges: joins ? [...rest, flange].sort((a, b) => a - b) : rest };
  }),
});

/** One more size, with the pattern's lengths to begin with; code and name follow the pattern's. */
export function addSize(part: Part, family: Pattern): Pattern {
  const number = family.sizes.length + 2;
  const size = {
    partId: `${part.id}-${number}`,
    name: `${part.name} ${number}`.trim(),
    lengthsMm: family.dimensions.map(({ flanges }) => ownLength(part.profile, flanges)),
  };
  return { ...family, sizes: [...family.sizes, size] };
}

export const withSize = (family: Pattern, at: number, patch: Partial<Pattern['sizes'][number]>): Pattern => ({
  ...family,
  sizes: withEntry(family.sizes, at, patch),
});

export const withLength = (family: Pattern, at: number, dimension: number, lengthMm: number): Pattern =>
  withSize(family, at, {
    lengthsMm: (family.sizes[at]?.lengthsMm ?? []).map((old, i) => (i === dimension ? lengthMm : old)),
  });
