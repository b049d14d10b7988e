import fc from 'fast-check';
import type { Hem, Profile } from '../../../core/part/profile.ts';
import type { Forming } from '../../../core/part/forming.ts';
import { inches, metric } from '../../support/writing.ts';

export const square = (direction: 'up' | 'down' = 'up', angle = 90): Profile['bends'][number] => ({
  angle,
  direction,
  radiusMm: null,
});
export const closedHem = (lengthMm: number, direction: 'up' | 'down' = 'up'): Hem => ({
  kind: 'closed',
  lengthMm,
  direction,
});

/** An angle of 60 × 40 mm unless told otherwise. */
export const aProfile = (changes: Partial<Profile> = {}): Profile => ({
  flangesMm: [60, 40],
  bends: [square()],
  startHem: null,
  endHem: null,
  measured: 'outside',
  paintedSide: 'up',
  ...changes,
});

/** 24 gauge galvanized, K of cold-rolled steel, 1 mm radius. */
export const light: Forming = { thicknessMm: 0.701, kFactor: 0.446, radiusMm: 1, units: metric };

/** Of the two arcs of a circle over a chord the shorter or the longer. */
export function arcLength(radius: number, chord: number, large: boolean): number {
  const shorter = 2 * radius * Math.asin(Math.min(1, chord / (2 * radius)));
  return large ? 2 * Math.PI * radius - shorter : shorter;
}

const direction = fc.constantFrom<'up' | 'down'>('up', 'down');
const folded = { lengthMm: fc.double({ min: 8, max: 30, noNaN: true }), direction };
const hem: fc.Arbitrary<Hem> = fc.oneof(
  fc.record({ kind: fc.constant('closed' as const), ...folded }),
  fc.record(
    {
      kind: fc.constantFrom('open' as const, 'teardrop' as const),
      ...folded,
      gapMm: fc.double({ min: 0.3, max: 6, noNaN: true }),
    },
    { requiredKeys: ['kind', 'lengthMm', 'direction'] },
  ),
);
const bend = fc.record({
  angle: fc.double({ min: 1, max: 150, noNaN: true }),
  direction,
  radiusMm: fc.option(fc.double({ min: 0, max: 3, noNaN: true })),
});

/** Any profile whose flanges are long enough for their bends. */
export const anyProfile: fc.Arbitrary<Profile> = fc.array(bend, { maxLength: 8 }).chain((bends) =>
  fc.record({
    bends: fc.constant(bends),
    flangesMm: fc.array(fc.double({ min: 60, max: 400, noNaN: true }), {
      minLength: bends.length + 1,
      maxLength: bends.length + 1,
    }),
    startHem: fc.option(hem),
    endHem: fc.option(hem),
    measured: fc.constantFrom<Profile['measured']>('outside', 'inside', 'apex'),
    paintedSide: direction,
  }),
);

export const anyForming: fc.Arbitrary<Forming> = fc.record({
  thicknessMm: fc.double({ min: 0.3, max: 2, noNaN: true }),
  kFactor: fc.double({ min: 0.3, max: 0.5, noNaN: true }),
  radiusMm: fc.double({ min: 0, max: 4, noNaN: true }),
  units: fc.constantFrom(inches, metric),
});

const other = <T extends { direction: 'up' | 'down' }>(fold: T): T => ({
  ...fold,
  direction: fold.direction === 'up' ? 'down' : 'up',
});

/** The same piece seen from its other face. */
export const mirrored = (p: Profile): Profile => ({
  ...p,
  bends: p.bends.map(other),
  startHem: p.startHem && other(p.startHem),
  endHem: p.endHem && other(p.endHem),
  paintedSide: p.paintedSide === 'up' ? 'down' : 'up',
});

/** The same piece read from its other edge. */
export const reversed = (p: Profile): Profile => ({
  ...p,
  flangesMm: p.flangesMm.toReversed(),
  bends: p.bends.toReversed(),
  startHem: p.endHem,
  endHem: p.startHem,
});
