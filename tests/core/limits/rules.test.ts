import { describe, expect, it } from 'vitest';
import type { Asked } from '../../../core/limits/finding.ts';
import { checkPart } from '../../../core/limits/limits.ts';
import { RULES, ruleName, type RuleName } from '../../../core/part/rules.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { Profile } from '../../../core/part/profile.ts';
import { aBrake, asked, aShear, found } from './asked.ts';
import { foreignToCommas } from '../../support/foreign-marks.ts';
import { foreignTo } from '../../support/foreign-units.ts';
import { PUBLICATION } from '../../support/publications.ts';
import { aTool } from '../../support/tool-builders.ts';
import { aProfile, closedHem, square } from '../part/profiles.ts';
import { withPoints } from '../../support/writing.ts';

describe('the order in which a brake bends', () => {
  const channel = aProfile({ flangesMm: [50.8, 25.4, 31.75], bends: [square(), square()] });
  const inOrder = (bendOrder: string[] | null, profile: Profile) =>
    checkPart({ id: 'P', name: 'Part', profile, bendOrder }, asked(), aBrake());

  it('is warned of where the piece runs into the tools in the order given, though not in another', () => {
    expect(inOrder(null, channel)).toEqual([]);
    const findings = inOrder(['bend 1', 'bend 2'], channel);
    expect(findings.map((f) => `${f.severity}: ${f.rule}`)).toEqual(['warning: bend order, collision']);
    expect(findings[0]?.message).toBe(
      'In the order given, the piece runs into the tools of Machine 1 at “bend 2”.',
    );
  });

  it('is warned of where no order clears the tools', () => {
    const deep = aProfile({ flangesMm: [100, 25, 100], bends: [square(), square()] });
    expect(inOrder(null, deep)[0]?.message).toMatch(/^In every order, the piece runs into usual tools/);
  });

  it('is warned of where another turns the piece less often', () => {
    const stepped = aProfile({
      flangesMm: [60, 60, 60, 60],
      bends: [square('up'), square('down'), square('up')],
    });
    const findings = inOrder(['bend 1', 'bend 2', 'bend 3'], stepped);
    expect(findings.map((f) => f.rule)).toEqual(['bend order, handling']);
    expect(findings[0]?.message).toMatch(
      /^The order given turns each piece \d+ times; there is one that turns it/,
    );
  });
});

describe('the shop’s own deductions', () => {
  const row = { gauge: '24', angle: 90, dieOpeningMm: 10, deductionMm: 2 };
  const material = { ...asked().material, deductions: [row] };

  it('warn on a brake whose V they say needs another blank than the one that is cut', () => {
    expect(found(aProfile(), aBrake(), asked({ material }))).toEqual([]);
    expect(found(aProfile(), aBrake({ dieOpeningMm: 10 }), asked({ material }))).toEqual([
      'warning: other V measured',
    ]);
  });

  it('warn of a figure that no metal gives', () => {
    const odd = { ...material, deductions: [{ ...row, dieOpeningMm: null, deductionMm: 0.2 }] };
    expect(found(aProfile(), aBrake(), asked({ material: odd }))).toEqual(['warning: K-factor']);
  });
});

/** A die and a punch of the machine, no hemming tools. */
const theTools = [
  aTool({ openingMm: 6.35, machineIds: ['M1'], lengthMm: 3200 }),
  aTool({ id: 'P', kind: 'punch', openingMm: null, machineIds: ['M1'], lengthMm: 3200 }),
];

/** A part, a metal and a machine that break just one rule each. */
const breaking: Readonly<Record<RuleName, readonly [Profile, Machine, Partial<Omit<Asked, 'part'>>]>> = {
  length: [aProfile(), aBrake(), { lengthMm: 3101 }],
  thickness: [aProfile(), aBrake({ maxThicknessMm: 0.5 }), {}],
  // 82 ksi: the root of the strength leaves 0.77 mm of a rating of 0.9, the strength itself 0.66.
  'thickness, margin': [
    aProfile(),
    aShear({ maxThicknessMm: 0.9 }),
    { material: { ...asked().material, tensileMpa: 565 } },
  ],
  tools: [aProfile({ startHem: closedHem(12) }), aBrake({ tonnes: 200 }), { tools: theTools }],
  'tool rating': [aProfile(), aBrake(), { tools: [{ ...theTools[0]!, ratingKnPerM: 50 }, theTools[1]!] }],
  'minimum strip': [aProfile({ flangesMm: [24], bends: [] }), aShear(), { lengthMm: 600 }],
  'back-gauge reach': [aProfile({ flangesMm: [901], bends: [] }), aShear(), {}],
  'narrow strip': [aProfile({ flangesMm: [50], bends: [] }), aShear(), {}],
  'minimum flange': [aProfile({ flangesMm: [60, 4.4] }), aBrake(), {}],
  // Full-hard steel asks for 1.4 mm; 6.35 mm makes 22 % of it in metal of 82 ksi, 1.39.
  'minimum radius': [aProfile(), aBrake(), { material: { ...asked().material, tensileMpa: 565 } }],
  'radius made by the V': [aProfile({ bends: [{ ...square(), radiusMm: 2.1 }] }), aBrake(), {}],
  // The V makes 1 mm.
  'punch tip': [aProfile(), aBrake(), { tools: [theTools[0]!, { ...theTools[1]!, radiusMm: 3 }] }],
  'bending force': [aProfile(), aBrake({ tonnes: 15 }), {}],
  'bending force, margin': [aProfile(), aBrake({ tonnes: 17 }), {}],
  'hem flattening force': [aProfile({ startHem: closedHem(12) }), aBrake({ tonnes: 80 }), {}],
  'hem flattening force, margin': [aProfile({ startHem: closedHem(12) }), aBrake({ tonnes: 90 }), {}],
  // 24 gauge takes 27.5 t a metre closed, 10.5 open; a brake of 50 t and 3 m between its frames stands 27.8.
  'concentrated load': [
    aProfile({ startHem: closedHem(12) }),
    aBrake({ tonnes: 40, betweenFramesMm: 3000 }),
    { lengthMm: 500 },
  ],
  'concentrated load, margin': [
    aProfile({ startHem: closedHem(12) }),
    aBrake({ tonnes: 50, betweenFramesMm: 3000 }),
    { lengthMm: 500 },
  ],
  'V for the thickness': [aProfile(), aBrake({ dieOpeningMm: 11 }), {}],
  'bend order, collision': [
    aProfile({ flangesMm: [100, 25, 100], bends: [square(), square()] }),
    aBrake(),
    {},
  ],
  'bend order, handling': [
    aProfile({ flangesMm: [60, 60, 60, 60], bends: [square('up'), square('down'), square('up')] }),
    aBrake(),
    {},
  ],
  'other V measured': [
    aProfile(),
    aBrake({ dieOpeningMm: 10 }),
    {
      material: {
        ...asked().material,
        deductions: [{ gauge: '24', angle: 90, dieOpeningMm: 10, deductionMm: 2 }],
      },
    },
  ],
  'K-factor': [aProfile(), aBrake(), { material: { ...asked().material, kFactor: 0.55 } }],
};

describe.each(ruleName.options)('the rule “%s”', (rule) => {
  const [profile, machine, want] = breaking[rule];
  const given = rule === 'bend order, handling' ? ['bend 1', 'bend 2', 'bend 3'] : null;
  const part = { id: 'P', name: 'Part', profile, bendOrder: given };
  const verdicts = (partRules: Asked['partRules']) =>
    checkPart(part, asked({ ...want, partRules }), machine).map((f) => [f.rule, f.severity, f.source]);

  it('says what it usually does, with its source', () => {
    expect(verdicts({})).toEqual([[rule, RULES[rule].verdict, RULES[rule].source]]);
  });

  it('is a stop, a warning or silent, as the shop takes it', () => {
    expect(verdicts({ [rule]: 'stop' })).toEqual([[rule, 'stop', RULES[rule].source]]);
    expect(verdicts({ [rule]: 'warning' })).toEqual([[rule, 'warning', RULES[rule].source]]);
    expect(verdicts({ [rule]: 'off' })).toEqual([]);
  });

  it.each(['in', 'mm'] as const)('says it in the units of the shop: %s', (units) => {
    const [finding] = checkPart(part, asked({ ...want, units: withPoints(units) }), machine);
    const said = `${finding?.message} ${finding?.advice} ${finding?.source} ${RULES[rule].says}`;
    expect(said).not.toMatch(foreignTo[units]);
    expect(said).not.toMatch(/\d t\b/);
  });

  it.each(['in', 'mm'] as const)('says it in the mark of a shop that writes commas: %s', (units) => {
    const [finding] = checkPart(part, asked({ ...want, units: { units, decimals: 'comma' } }), machine);
    expect(`${finding?.message} ${finding?.advice}`).not.toMatch(foreignToCommas);
  });

  it('names no publication, and has nobody hold a piece by hand', () => {
    const [finding] = checkPart(part, asked(want), machine);
    const said = `${finding?.message} ${finding?.advice} ${finding?.source} ${RULES[rule].says}`;
    expect(said).not.toMatch(PUBLICATION);
    expect(said.replaceAll('never hold it by hand', '')).not.toMatch(/by hand/);
  });
});
