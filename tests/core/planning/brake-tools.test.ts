import fc from 'fast-check';
import { checkPart } from '../../../core/limits/limits.ts';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { setUp } from '../../../core/edit/floor-done.ts';
import { blankOf } from '../../../core/part/blank.ts';
import { blankBasisOf, formingIn } from '../../../core/part/forming.ts';
import { girth } from '../../../core/part/girth.ts';
import type { Tool } from '../../../core/part/tool.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { sharedTools } from '../../../core/planning/set-up.ts';
import { toProblem } from '../../../core/planning/to-problem.ts';
import type { Shop } from '../../../core/shop/state.ts';
import {
  aBrake,
  aLine,
  aMaterial,
  aPart,
  aRecord,
  aShear,
  aShop,
  someSettings,
  NOW,
} from '../../support/builders.ts';
import { aTool } from '../../support/tool-builders.ts';

const die = (id: string, openingMm: number, machineIds: string[], own: Partial<Tool> = {}): Tool =>
  aTool({ id, name: `Die ${id}`, openingMm, machineIds, ...own });
const punch = (id: string, machineIds: string[], own: Partial<Tool> = {}): Tool =>
  aTool({ id, kind: 'punch', name: `Punch ${id}`, openingMm: null, machineIds, ...own });
const hemming = (id: string, machineIds: string[]): Tool =>
  aTool({ id, kind: 'hemming', name: 'Hemming tools', openingMm: null, angleDeg: null, machineIds });

const hemmed = aPart({
  profile: { ...aPart().profile, startHem: { kind: 'closed', lengthMm: 12, direction: 'up' } },
});
/** Two brakes, each with a V 8 and a punch of its own; the hemming tools fit both. */
const both = (own: Partial<Shop> = {}): Shop =>
  aShop({
    machine: [aBrake({ tonnes: 200 }), aBrake({ id: 'B2', name: 'Second', tonnes: 200 }), aShear()],
    part: [hemmed],
    tool: [
      ...['B1', 'B2'].flatMap((id) => [die(`${id}-V8`, 8, [id]), punch(`${id}-P`, [id])]),
      hemming('H', ['B1', 'B2']),
    ],
    order: aShop().order.slice(0, 1),
    line: [aLine()],
    ...own,
  });
const bendingOf = (shop: Shop) => operationsOf(shop).operations.find(({ stage }) => stage === 'brake')!;

describe('a shop with brake tools on record', () => {
  it('sets up each brake’s own tools, and says which of them another brake may need', () => {
    const { machines } = bendingOf(both());
    expect(machines.map(({ id, attributes }) => [id, attributes.tools, attributes.hemming])).toEqual([
      ['B1', 'B1-V8 + B1-P', 'H'],
      ['B2', 'B2-V8 + B2-P', 'H'],
    ]);
    expect(machines.map(({ tools }) => sharedTools(tools))).toEqual([['H'], ['H']]);
    const built = toProblem(both(), NOW);
    const asked = built.ok ? built.value.problem.input.jobs[0]!.operations[1]!.machines : [];
    expect(asked).toMatchObject([
      { id: 'B1', attributes: { tools: 'B1-V8 + B1-P', hemming: 'H' }, holds: ['H'] },
      { id: 'B2', attributes: { tools: 'B2-V8 + B2-P', hemming: 'H' }, holds: ['H'] },
    ]);
  });

  it('a brake without hemming tools refuses a hemmed part and says so; the other takes it', () => {
    const tool = both().tool.map((one) => (one.id === 'H' ? { ...one, machineIds: ['B1'] } : one));
    const { machines, refused } = bendingOf(both({ tool }));
    expect(machines.map(({ id }) => id)).toEqual(['B1']);
    expect(refused).toMatchObject([
      { machineId: 'B2', reason: expect.stringMatching(/^Second has no hemming tools/) as string },
    ]);
  });

  it('bends as before while no tools are on record', () => {
    const { machines } = bendingOf(both({ tool: [], part: [aPart()] }));
    expect(machines.map(({ tools, attributes }) => [tools, attributes.tools])).toEqual([
      [null, undefined],
      [null, undefined],
    ]);
  });

  it('a brake keeps what was set up on it when its work is done', () => {
    const shop = both();
    const [change] = setUp(shop, aRecord({ id: '1042/1:brake', machineId: 'B2' }));
    expect(change?.after).toMatchObject({ state: { tools: 'B2-V8 + B2-P', hemming: 'H' } });
  });
});

describe('a tool', () => {
  const save = (shop: Shop, row: Tool) => applyCommand(shop, { do: 'row.save', kind: 'tool', row });
  it.each([
    [die('V6', NaN, ['B1'], { openingMm: null }), 'openingMm'],
    [punch('P', ['B1'], { angleDeg: null }), 'angleDeg'],
    [hemming('H2', []), 'machineIds'],
    [hemming('H2', ['S1']), 'machineIds'],
  ])('needs the figures of its kind, and a brake that it fits', (row, field) => {
    expect(save(aShop(), row)).toMatchObject({ ok: false, issues: [{ field }] });
  });
  it('keeps the brake that it fits from being removed', () => {
    const shop = aShop({ tool: [aTool()], downtime: [] });
    expect(applyCommand(shop, { do: 'row.remove', kind: 'machine', id: 'B1', revision: 0 })).toMatchObject({
      ok: false,
      issues: [{ message: 'The machine B1 is used by tool V8.' }],
    });
  });
});

/** Shops with a few dies and punches, each for some of three brakes, some with a rating. */
const anyTools = fc
  .array(
    fc.record({
      kind: fc.constantFrom('die' as const, 'punch' as const, 'hemming' as const),
      openingMm: fc.constantFrom(4, 6, 8, 12),
      angleDeg: fc.constantFrom(30, 85),
      gooseneck: fc.boolean(),
      radiusMm: fc.constantFrom(0.5, 2, 3),
      lengthMm: fc.constantFrom(2000, 3050, 4000),
      ratingKnPerM: fc.constantFrom(null, 20, 60, 500),
      machineIds: fc.uniqueArray(fc.constantFrom('B1', 'B2', 'B3'), { minLength: 1 }),
    }),
    { maxLength: 12 },
  )
  .map((tools) => tools.map((one, i) => ({ ...aTool({ id: `T${i}` }), ...one })));
const anyShop = fc
  .record({
    tool: anyTools,
    vMm: fc.constantFrom(undefined, 6, 8),
    hem: fc.option(
      fc.record({
        kind: fc.constantFrom('open' as const, 'teardrop' as const),
        lengthMm: fc.constant(12),
        direction: fc.constantFrom('up' as const, 'down' as const),
        gapMm: fc.constantFrom(undefined, 1, 4),
      }),
    ),
    closed: fc.boolean(),
    byV: fc.boolean(),
  })
  .map(({ tool, vMm, hem, closed, byV }) => {
    const gauge = { label: '24', thicknessMm: 0.701, kgPerM2: 5.64 };
    return both({
      tool,
      settings: someSettings({ girthRule: byV ? 'computedByV' : 'computed' }),
      part: [closed ? hemmed : hem ? aPart({ profile: { ...aPart().profile, endHem: hem } }) : aPart()],
      machine: [...['B1', 'B2', 'B3'].map((id) => aBrake({ id, name: id, tonnes: 300 })), aShear()],
      material: [
        aMaterial({
          gauges: [vMm === undefined ? gauge : { ...gauge, vMm }],
          deductions: [{ gauge: '24', angle: 90, dieOpeningMm: 6, deductionMm: 1.9 }],
        }),
      ],
    });
  });

describe('whatever tools a shop has', () => {
  it('a part’s blank is that of every brake with tools that can bend it', () => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        const [part, material] = [shop.part[0]!, shop.material[0]!];
        const gauge = material.gauges[0]!;
        const basis = blankBasisOf(shop);
        const cut = blankOf(aLine(), part, material, gauge, basis);
        for (const { tools } of bendingOf(shop)?.machines ?? []) {
          if (tools === null) continue;
          const forming = formingIn(material, gauge, tools.die.openingMm, basis);
          const here = girth(part.profile, { ...forming, rule: basis.girthRule });
          expect(cut.ok && here.ok && cut.value.girthMm).toBe(here.ok && here.value.girthMm);
        }
      }),
    );
  });

  it('a punch whose tip would ask for another blank is told, and no other one', () => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        const [part, material] = [shop.part[0]!, shop.material[0]!];
        const gauge = material.gauges[0]!;
        const basis = blankBasisOf(shop);
        const rule = basis.girthRule;
        const asked = { material, gauge, lengthMm: 2540, partRules: {}, ...basis };
        for (const { id, tools } of bendingOf(shop)?.machines ?? []) {
          if (tools === null) continue;
          const { die, punch: chosenPunch } = tools;
          // Metal of 330 MPa takes 16 % × 330/413.7 of the V.
          const byV = 0.16 * (330 / 413.7) * die.openingMm!;
          const forming = formingIn(material, gauge, die.openingMm, basis);
          const cut = girth(part.profile, { ...forming, rule });
          const needs = girth(part.profile, { ...forming, radiusMm: chosenPunch.radiusMm ?? 0, rule });
          if (!cut.ok || !needs.ok) throw new Error('a part of this test can be bent');
          const other = Math.abs(cut.value.girthMm - needs.value.girthMm) >= 0.1;
          const machine = shop.machine.find((one) => one.id === id)!;
          const told = checkPart(part, asked, machine).some(({ rule: of }) => of === 'punch tip');
          expect(told).toBe((chosenPunch.radiusMm ?? 0) > byV && other);
        }
      }),
    );
  });

  it('no plan loads a tool above its rating', () => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        for (const { tools } of bendingOf(shop)?.machines ?? []) {
          if (tools === null) continue;
          // 575 × T²/V US tons a foot in 60 ksi steel, inches, worked out anew.
          const [t, v] = [0.701 / 25.4, tools.die.openingMm! / 25.4];
          const knPerM = ((575 * t * t) / v) * (330 / 413.7) * (8.896443 / 0.3048);
          for (const { ratingKnPerM } of [tools.die, tools.punch])
            expect(ratingKnPerM ?? Infinity).toBeGreaterThanOrEqual(knPerM);
        }
      }),
    );
  });

  it('a brake takes only tools that fit it and are as long as the piece', () => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        for (const { id, tools } of bendingOf(shop)?.machines ?? [])
          for (const tool of [tools?.die, tools?.punch, tools?.hemming]) {
            if (!tool) continue;
            expect(tool.machineIds).toContain(id);
            expect(tool.lengthMm).toBeGreaterThanOrEqual(2540);
          }
      }),
    );
  });
});
