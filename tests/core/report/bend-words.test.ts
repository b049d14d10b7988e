import { describe, expect, it } from 'vitest';
import { givenOrder } from '../../../core/part/bend-order.ts';
import type { Forming } from '../../../core/part/forming.ts';
import type { Hem } from '../../../core/part/profile.ts';
import { bendListOf, bendRows, movesSentence } from '../../../core/report/bend-words.ts';
import { aMaterial, aPart } from '../../support/builders.ts';
import { aProfile, closedHem, light, square } from '../part/profiles.ts';
import { inches, metric } from '../../support/writing.ts';

const steps = ['fold end hem', 'close end hem', 'bend 2', 'bend 1'];
const stepped = (endHem: Hem) =>
  aProfile({ flangesMm: [40, 60, 40], bends: [square('up'), square('down')], endHem });
const open: Hem = { kind: 'open', lengthMm: 12, direction: 'down' };
const closing = (hem: Hem, forming: Forming = light): string | undefined =>
  bendRows(givenOrder(stepped(hem), 8, steps), stepped(hem), forming)[1]?.angle;

describe('a bend list', () => {
  it('says which way each step goes, how far, which way the paint looks, and how the piece is turned', () => {
    const order = givenOrder(stepped(open), 8, steps);
    const rows = bendRows(order, stepped(open), light);
    expect(
      rows.map(({ step, direction, angle, paint }) => `${step} ${direction}: ${angle}, ${paint}`),
    ).toEqual([
      'fold end hem down: 135° turned, 45° included, down',
      'close end hem down: to a gap of 0.70 mm, down',
      'bend 2 down: 90° turned, 90° included, down',
      'bend 1 up: 90° turned, 90° included, up',
    ]);
    expect(rows.at(-1)?.before).toMatch(/^turn over/);
    expect(movesSentence(order)).toMatch(/^Turned over once/);
    expect(movesSentence({ ...order, flips: 0, turns: 0 })).toBe('Not turned at all.');
  });

  it('says of a hem how it ends: flat, at its gap, or with its edge on the flange, in the shop’s units', () => {
    expect(closing(closedHem(12))).toBe('flat');
    expect(closing({ ...open, gapMm: 3.175 })).toBe('to a gap of 3.2 mm');
    expect(closing({ ...open, gapMm: 3.175 }, { ...light, units: inches })).toBe('to a gap of 1/8 in');
    // Eye 3.175, T 0.701: R 1.5875, s 12 − 1.5875 − 0.701 = 9.7115, 2·arctan(R/s) = 18.6°.
    expect(closing({ ...open, kind: 'teardrop', gapMm: 3.175 })).toBe(
      '198.6° turned, edge on the flange, eye 3.2 mm',
    );
    const commas: Forming = { ...light, units: { units: 'mm', decimals: 'comma' } };
    expect(closing({ ...open, kind: 'teardrop', gapMm: 3.175 }, commas)).toBe(
      '198,6° turned, edge on the flange, eye 3,2 mm',
    );
  });

  it('asks for a test piece where there is a teardrop, and only there', () => {
    const note = (endHem: Hem) => {
      const material = aMaterial();
      const basis = { girthRule: 'computed', dieOpeningMm: 8, tools: [], units: metric } as const;
      return bendListOf(aPart({ profile: stepped(endHem) }), material, material.gauges[0]!, basis).note;
    };
    expect(note({ ...open, kind: 'teardrop' })).toMatch(/test piece/);
    expect(note(open)).toBe('');
  });
});
