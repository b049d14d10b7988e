import { describe, expect, it } from 'vitest';
import type { Proposal } from '../../../core/learn/propose.ts';
import { lateWords } from '../../../renderer/screens/learning/late-sentence.tsx';
import {
  acceptCommand,
  differs,
  proposalsFor,
  rowsOf,
  withPartners,
} from '../../../renderer/screens/learning/proposals.ts';
import { aBrake, at } from '../../support/builders.ts';
import { inches, withPoints } from '../../support/writing.ts';

const proposal = (own: Partial<Proposal>): Proposal => ({
  key: 'hitLong',
  present: 16,
  proposed: 18.5,
  interval: [17, 20],
  together: [],
  observations: 60,
  explained: 0.6,
  outliers: [],
  ...own,
});

describe('a proposal', () => {
  it('differs when the figure in use lies outside of what is likely', () => {
    expect(differs(proposal({}))).toBe(true);
    expect(differs(proposal({ present: 17 }))).toBe(false);
    expect(differs(proposal({ present: 20.5 }))).toBe(true);
  });

  it('is taken over with those that can only be learned together with it', () => {
    const up = proposal({ key: 'pickUp', together: ['putDown'] });
    const down = proposal({ key: 'putDown', together: ['pickUp'] });
    expect(withPartners([up, down, proposal({})], up).map((p) => p.key)).toEqual(['pickUp', 'putDown']);
  });

  it('carries what it rests on, and is left out when nothing changes', () => {
    const when = at('2026-11-30', '09:00');
    expect(
      acceptCommand('B1', [proposal({}), proposal({ key: 'flip', present: 6, proposed: 6 })], when),
    ).toEqual({
      do: 'standards.accept',
      machineId: 'B1',
      at: when,
      changes: [{ key: 'hitLong', before: 16, after: 18.5, low: 17, high: 20, observations: 60 }],
    });
  });

  it('is named as the standard is, a changeover by what changes, with its unit', () => {
    const proposals = [proposal({ key: 'handlingPerKg', together: ['pickUp'] }), proposal({ key: 'gauge' })];
    const named = (units: 'in' | 'mm') =>
      rowsOf(aBrake(), proposals, withPoints(units)).map(({ name, unit, together }) => [
        name,
        unit.name,
        together,
      ]);
    expect(named('in')[0]).toEqual([
      'Extra handling for the weight of the piece',
      's/lb',
      ['Pick up a blank'],
    ]);
    expect(named('mm')).toEqual([
      ['Extra handling for the weight of the piece', 's/kg', ['Pick up a blank']],
      ['Changeover of gauge', 's', []],
    ]);
  });
});

it('a machine without finished work has no proposals, and says so', () => {
  const { standards, changeover } = proposalsFor(aBrake(), { observations: [], changeovers: [] });
  expect(!standards.ok && standards.issues[0]?.message).toMatch(/B1 has no finished operations yet/);
  expect(!changeover.ok && changeover.issues[0]?.message).toMatch(/No changeover of machine B1/);
});

it('what learning would have brought is said plainly, also when it is nothing', () => {
  const tried = { learnedFrom: 40, foretold: 20 };
  expect(lateWords({ ...tried, before: 0.14, after: 0.122 }, inches)).toBe(
    'Learned from the first 40 operations and checked on the 20 after them, estimates are usually off by 12.2 % instead of 14.0 %.',
  );
  expect(lateWords({ ...tried, before: 0.14, after: 0.1401 }, inches)).toMatch(/14.0 %, as they are now/);
  expect(lateWords({ ...tried, before: 0.12, after: 0.15 }, inches)).toMatch(/more than the 12.0 % now/);
});
