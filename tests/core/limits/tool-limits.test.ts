import { describe, expect, it } from 'vitest';
import { checkPart } from '../../../core/limits/limits.ts';
import { setUpFor } from '../../../core/limits/tool-limits.ts';
import { blankOf } from '../../../core/part/blank.ts';
import type { Profile } from '../../../core/part/profile.ts';
import type { Tool } from '../../../core/part/tool.ts';
import { aTool } from '../../support/tool-builders.ts';
import { aBrake, asked } from './asked.ts';
import { aProfile, closedHem, square } from '../part/profiles.ts';

const die = aTool({ id: 'V6', name: 'Die V 6', openingMm: 6, machineIds: ['M1'] });
const punch: Tool = {
  ...aTool({ id: 'P85', name: 'Straight punch', kind: 'punch', machineIds: ['M1'] }),
  ...{ openingMm: null, radiusMm: 0.8 },
};
const gooseneck: Tool = { ...punch, id: 'G85', name: 'Gooseneck', gooseneck: true };
const hemming: Tool = { ...punch, id: 'H', name: 'Hemming tools', kind: 'hemming', angleDeg: null };

const part = (own: Partial<Profile> = {}) => ({
  id: 'L',
  name: 'Angle',
  profile: aProfile(own),
  bendOrder: null,
});
const hemmed = () => part({ startHem: closedHem(12) });
const want = (tools: readonly Tool[], own = {}) => asked({ tools, ...own });
const chosen = (of: ReturnType<typeof part>, tools: readonly Tool[]) => {
  const { choice } = setUpFor({ part: of, ...want(tools) }, aBrake());
  const set = choice?.set;
  return set ? [set.die.id, set.punch.id, set.hemming?.id ?? null] : choice?.lacks;
};
const rulesOf = (of: ReturnType<typeof part>, tools: readonly Tool[]) =>
  checkPart(of, want(tools), aBrake()).map(({ rule }) => rule);
const stops = (of: ReturnType<typeof part>, tools: readonly Tool[], own = {}) =>
  checkPart(of, want(tools, own), aBrake())
    .filter(({ rule }) => rule === 'tools' || rule === 'tool rating')
    .map(({ severity, message }) => `${severity}: ${message}`);

describe('the tools that a brake takes for a part', () => {
  it('are a die of the house V and a punch; hemming tools where there is a hem', () => {
    expect(chosen(part(), [die, punch, hemming])).toEqual(['V6', 'P85', null]);
    expect(chosen(hemmed(), [die, punch, hemming])).toEqual(['V6', 'P85', 'H']);
  });

  it('the brake is then as it is set up: force, flanges and order go by that V', () => {
    expect(setUpFor({ part: part(), ...want([die, punch]) }, aBrake()).machine.dieOpeningMm).toBe(6);
    expect(setUpFor({ part: part(), ...want([die]) }, aBrake()).machine.dieOpeningMm).toBe(6.35);
  });

  it('first come those that no other brake needs, then the longest', () => {
    const shared = aTool({ ...die, id: 'A6', lengthMm: 4000, machineIds: ['M1', 'M2'] });
    const long = aTool({ ...die, id: 'L6', lengthMm: 3500 });
    expect(chosen(part(), [shared, die, long, punch])).toEqual(['L6', 'P85', null]);
  });

  it('a gooseneck is asked for only where a straight punch would be hit', () => {
    // A channel whose legs are as deep as its web is wide closes on a straight punch.
    const deep = part({
      flangesMm: [40, 25, 40],
      bends: [square(), square()],
    });
    expect(chosen(deep, [die, punch])).toEqual(['no gooseneck punch']);
    expect(chosen(deep, [die, punch, gooseneck])).toEqual(['V6', 'G85', null]);
  });
});

describe('a punch whose tip is rounder than what the V makes', () => {
  // Metal of 60 ksi takes 16 % of a V of 6, 0.96 mm; a tip of 3 mm makes 3 mm of it.
  const round: Tool = { ...punch, id: 'R3', name: 'Radius punch', radiusMm: 3, lengthMm: 4000 };
  const says = (of: ReturnType<typeof part>, own: object) =>
    checkPart(of, want([die, round], { units: { units: 'mm', decimals: 'point' }, ...own }), aBrake())
      .filter(({ rule }) => rule === 'punch tip')
      .map(({ severity, message }) => `${severity}: ${message}`);
  const cutFor = (radiusMm: number | null) => {
    const { material, gauge, ...basis } = want([die, round], { girthRule: 'computedByV' });
    const blank = blankOf(
      { id: '1/1', lengthMm: 3000 },
      part({ bends: [{ ...square(), radiusMm }] }),
      material,
      gauge,
      basis,
    );
    return blank.ok ? Math.round(blank.value.girthMm * 10) / 10 : NaN;
  };

  it('opens the bends: the shop is told the blank that it is cut for and the one that it would need', () => {
    const [told] = says(part(), { girthRule: 'computedByV' });
    expect(told).toMatch(
      /^warning: The tip of Radius punch on Machine 1 has a radius of 3 mm; the V alone makes 1 mm\./,
    );
    expect(told).toContain(`the blank is cut ${cutFor(null)} mm wide and would have to be ${cutFor(3)} mm.`);
    expect(cutFor(null)).not.toBe(cutFor(3));
  });

  it('is nothing to tell where the blank does not depend on it, or the drawing asks for that radius', () => {
    expect(says(part(), { girthRule: 'outsideSum' })).toEqual([]);
    expect(says(part({ bends: [{ ...square(), radiusMm: 3 }] }), { girthRule: 'computedByV' })).toEqual([]);
  });

  it('is taken only where the bends ask for such a radius; the blank is by the V whichever is', () => {
    expect(chosen(part(), [die, round, punch])).toEqual(['V6', 'P85', null]);
    const drawn = part({ bends: [{ ...square(), radiusMm: 3 }] });
    expect(chosen(drawn, [die, punch, round])).toEqual(['V6', 'R3', null]);
    expect(rulesOf(drawn, [die, punch, round])).not.toContain('radius made by the V');
    expect(rulesOf(drawn, [die, punch])).toContain('radius made by the V');
  });
});

describe('a brake without a tool that the part needs', () => {
  it('says which one it lacks', () => {
    expect(stops(hemmed(), [die, punch])).toEqual([
      'stop: Machine 1 has no hemming tools for a piece of 120 in in a V of 0.236 in.',
    ]);
  });

  it('or that it is too short or not sharp enough', () => {
    expect(chosen(part(), [{ ...die, lengthMm: 2000 }, punch])).toEqual([
      'no die of the V for this metal long enough',
    ]);
    const acute = part({ bends: [{ ...square(), angle: 120 }] });
    expect(chosen(acute, [die, punch])).toEqual([
      'no die of the V for this metal sharp enough',
      'no punch sharp enough',
    ]);
  });

  it('is refused nothing while its list is half entered, or when no tool fits it', () => {
    expect(stops(hemmed(), [die])).toEqual([]);
    expect(stops(hemmed(), [{ ...die, machineIds: ['M2'] }])).toEqual([]);
  });
});

describe('a tool’s own rating', () => {
  // Force by length under the lower rating of punch and die: a trade article on tool limits; the force is T5's kind:
  // 575 × 0.0276² ÷ 0.236 US tons a foot = 1.85, 54 kN/m.
  it('stops what would overload it, and a stronger tool is taken first', () => {
    const weak = { ...die, ratingKnPerM: 50 };
    expect(stops(part(), [weak, punch])).toHaveLength(1);
    expect(stops(part(), [weak, { ...die, id: 'Z6', ratingKnPerM: 60 }, punch])).toEqual([]);
    expect(stops(part(), [{ ...die, ratingKnPerM: 60 }, punch])).toEqual([]);
  });

  it('counts for hemming tools too', () => {
    // Benson, Press Brake Technology, SME 1997, p. 138: closed, 23 t a metre at 0.6 mm and 32 at 0.8; so about 27.5 at 0.701, 270 kN/m.
    const strong = aTool({ ...hemming, ratingKnPerM: 280 });
    expect(stops(hemmed(), [die, punch, { ...hemming, ratingKnPerM: 260 }])).toHaveLength(1);
    expect(stops(hemmed(), [die, punch, strong])).toEqual([]);
  });
});
