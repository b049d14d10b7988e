import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendOrder, givenOrder, orderOfPart, type BendOrder } from '../../../core/part/bend-order.ts';
import { isOrderOf, stepsOf } from '../../../core/part/bend-steps.ts';
import type { Profile } from '../../../core/part/profile.ts';
import { aProfile, anyProfile, closedHem, mirrored, reversed, square } from './profiles.ts';

const V = 8;
const names = (order: BendOrder): string[] => order.steps.map(({ step }) => step);
const moves = ({ flips, turns, collisions }: BendOrder) => ({ flips, turns, collisions });
const zee = aProfile({ flangesMm: [40, 60, 40], bends: [square('up'), square('down')] });
/** A channel: both legs up. */
const channel = (left: number, web: number, right: number): Profile =>
  aProfile({ flangesMm: [left, web, right], bends: [square(), square()] });

/** Few enough folds that every order is looked at. */
const short = anyProfile.filter(
  ({ bends, startHem, endHem }) => bends.length + 2 * [startHem, endHem].filter(Boolean).length <= 6,
);

/** Every order of the steps in which a hem is closed right after it is folded. */
function allOrders(steps: readonly string[]): string[][] {
  const units = steps
    .filter((step) => !step.startsWith('close'))
    .map((step) => (step.startsWith('fold') ? [step, step.replace('fold', 'close')] : [step]));
  const permute = (rest: string[][]): string[][] =>
    rest.length === 0
      ? [[]]
      : rest.flatMap((unit, i) => permute(rest.toSpliced(i, 1)).map((r) => [...unit, ...r]));
  return permute(units);
}

describe('the order in which a part is bent', () => {
  it('names every step once, a hem folded before it is closed', () => {
    fc.assert(
      fc.property(short, (profile) => {
        expect(isOrderOf(profile, names(bendOrder(profile, V)))).toBe(true);
      }),
      { numRuns: 60 },
    );
    expect(bendOrder(aProfile({ flangesMm: [100], bends: [] }), V).steps).toEqual([]);
  });

  it('closes a hem at once, and hems before the bends beside them', () => {
    const hemmed = aProfile({ startHem: closedHem(12), endHem: closedHem(12) });
    expect(names(bendOrder(hemmed, V))).toEqual([
      'fold start hem',
      'close start hem',
      'fold end hem',
      'close end hem',
      'bend 1',
    ]);
  });

  it('has no order with fewer collisions, nor as few with fewer flips and turns', () => {
    fc.assert(
      fc.property(short, (profile) => {
        const found = bendOrder(profile, V);
        for (const steps of allOrders(stepsOf(profile))) {
          const other = givenOrder(profile, V, steps);
          expect(other.collisions).toBeGreaterThanOrEqual(found.collisions);
          if (other.collisions === found.collisions)
            expect(other.flips + other.turns).toBeGreaterThanOrEqual(found.flips + found.turns);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('turns as often when the piece is mirrored or read from its other edge', () => {
    fc.assert(
      fc.property(short, (p) => {
        for (const same of [mirrored(p), reversed(p), reversed(mirrored(p))])
          expect(moves(bendOrder(same, V))).toEqual(moves(bendOrder(p, V)));
      }),
      { numRuns: 40 },
    );
  });

  it('counts a roll over the long axis once, though it also brings the other edge to the gauge', () => {
    expect(moves(bendOrder(zee, V))).toEqual({ flips: 1, turns: 0, collisions: 0 });
    expect(moves(bendOrder(aProfile(), V))).toEqual({ flips: 0, turns: 0, collisions: 0 });
  });

  it('says which way the paint looks and that the piece is turned over between up and down', () => {
    const [first, second] = bendOrder(zee, V).steps;
    expect([first?.paintUp, second?.paintUp].sort()).toEqual([false, true]);
    expect([first?.flip, second?.flip]).toEqual([false, true]);
  });
});

describe('a piece among the tools', () => {
  it('bends the short leg of a channel first, so that it clears the punch', () => {
    // Web 1 in: a leg of 2 in already up would stand in the neck of the punch; one of 1 1/4 in passes in front of it.
    const order = bendOrder(channel(50.8, 25.4, 31.75), V);
    expect(order.collisions).toBe(0);
    expect(names(order)).toEqual(['bend 2', 'bend 1']);
    expect(givenOrder(channel(50.8, 25.4, 31.75), V, ['bend 1', 'bend 2']).collisions).toBe(1);
  });

  it('finds no way round the punch for a narrow deep channel', () => {
    expect(bendOrder(channel(100, 25, 100), V).collisions).toBe(1);
    expect(bendOrder(channel(100, 250, 100), V).collisions).toBe(0);
  });

  it('does not let a flange hang into the die: a short offset needs a narrow V', () => {
    const offset = aProfile({ flangesMm: [60, 14, 60], bends: [square('up'), square('down')] });
    expect(bendOrder(offset, 8).collisions).toBe(0);
    expect(bendOrder(offset, 32).collisions).toBe(1);
  });

  it('closes a hem only while its flange lies flat in the tools', () => {
    const kicked = aProfile({ flangesMm: [100, 15], bends: [square()], endHem: closedHem(10) });
    const late = ['bend 1', 'fold end hem', 'close end hem'];
    expect(bendOrder(kicked, V).collisions).toBe(0);
    expect(givenOrder(kicked, V, late).steps.at(-1)).toMatchObject({ step: 'close end hem', collides: true });
  });
});

describe('the shop’s own order', () => {
  it('is taken as given, its flips and turns counted', () => {
    const stepped = aProfile({
      flangesMm: [60, 60, 60, 60],
      bends: [square('up'), square('down'), square('up')],
    });
    const own = ['bend 1', 'bend 2', 'bend 3'];
    expect(names(orderOfPart({ profile: stepped, bendOrder: own }, V))).toEqual(own);
    expect(givenOrder(stepped, V, own).flips).toBe(2);
    expect(orderOfPart({ profile: stepped, bendOrder: null }, V).flips).toBe(1);
  });

  it('that names other steps than the profile has is a bug', () => {
    expect(() => givenOrder(zee, V, ['bend 1'])).toThrow(RangeError);
    expect(() => givenOrder(zee, V, ['bend 1', 'bend 3'])).toThrow(RangeError);
    expect(isOrderOf(aProfile({ endHem: closedHem(12) }), ['close end hem', 'fold end hem', 'bend 1'])).toBe(
      false,
    );
  });
});
