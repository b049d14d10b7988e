import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { seenQueues } from '../../../core/edit/stale.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import { FURTHER_STAGES, type FurtherStage } from '../../../core/part/stage.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { routingOf } from '../../../core/planning/routing.ts';
import { toSearchProblem } from '../../../core/planning/to-problem.ts';
import { missingToPlan } from '../../../core/report/missing.ts';
import { check } from '../../../core/schedule/check.ts';
import { improve } from '../../../core/schedule/improve.ts';
import type { RowOf, Shop } from '../../../core/shop/state.ts';
import {
  aBrake,
  aCalendar,
  aLine,
  anOrder,
  aPart,
  aRecord,
  aShear,
  aShop,
  at,
  NOW,
} from '../../support/builders.ts';
import { aBench, aFurtherStep } from '../../support/further-step-builders.ts';
import { must } from '../schedule/hand-shop.ts';

const CODES: Readonly<Record<FurtherStage, string>> = { notch: 'N1', end: 'E1', outside: 'O1', pack: 'P1' };
const placeAt = (stage: FurtherStage, own: Partial<RowOf<'machine'>> = {}) =>
  aBench({ id: CODES[stage], name: stage, stage, ...own });

/** Corners that go through every step, on the builders' shear and brake and a bench for each further step. */
const shopWith = (steps: RowOf<'part'>['steps'], own: Partial<Shop> = {}): Shop =>
  aShop({
    part: [aPart({ steps })],
    machine: [aBrake(), aShear(), ...FURTHER_STAGES.map((stage) => placeAt(stage))],
    downtime: [],
    order: [anOrder()],
    line: [aLine(), aLine({ number: 2 })],
    ...own,
  });
const everyStep = FURTHER_STAGES.map((stage) => aFurtherStep(stage));
const planned = (shop: Shop) => {
  const plan = must(viewPlan(shop, NOW));
  expect(check(plan.problem, plan.schedule)).toEqual([]);
  return plan;
};
const stepsOf = (shop: Shop, lineId = '1042/1') =>
  planned(shop)
    .schedule.operations.filter(({ job }) => job === lineId)
    .sort((a, b) => a.index - b.index);
const operation = (shop: Shop, id: string) => operationsOf(shop).operations.find((o) => o.id === id)!;

describe('a routing', () => {
  it('has the further steps that a part asks for, each at its place among shearing and bending', () => {
    expect(routingOf(aPart({ steps: everyStep.toReversed() }))).toEqual([
      ...['shear', 'notch', 'brake', 'end', 'outside', 'pack'],
    ]);
    expect(routingOf(aPart())).toEqual(['shear', 'brake']);
  });

  it('follows one step by the next, each on a bench of its own', () => {
    const steps = stepsOf(shopWith(everyStep));
    expect(steps.map((o) => o.machine)).toEqual(['S1', 'N1', 'B1', 'E1', 'O1', 'P1']);
    steps.slice(1).forEach((o, k) => expect(o.start).toBeGreaterThanOrEqual(steps[k]!.end));
  });

  it('of a shop without further steps is planned as before, benches or not', () => {
    const shop = aShop();
    const benches = { ...shop, machine: [...shop.machine, placeAt('pack')] };
    const { P1, ...queues } = planned(benches).schedule.queues;
    expect(P1).toEqual([]);
    expect(queues).toEqual(planned(shop).schedule.queues);
    expect(planned(benches).figures).toEqual(planned(shop).figures);
  });
});

describe('time at a bench', () => {
  // Our usual figures: ready and away 120 s, 15 s a piece, 15 % allowance: (120 + 20 × 15) × 1.15 = 483 s.
  it('is to get ready once a line, and each piece, with the allowance', () =>
    expect(operation(shopWith([aFurtherStep('pack')]), '1042/1:pack').machines[0]?.seconds).toBe(483));

  it('is the part’s own for each piece where it says so: (120 + 20 × 60) × 1.15', () =>
    expect(
      operation(shopWith([aFurtherStep('pack', { secondsPerPiece: 60 })]), '1042/1:pack').machines[0]
        ?.seconds,
    ).toBe(1518));

  it('is done by the one that the part names, or by any', () => {
    const two = { machine: [aBrake(), aShear(), placeAt('pack'), placeAt('pack', { id: 'P2' })] };
    const ids = (shop: Shop) => operation(shop, '1042/1:pack').machines.map(({ id }) => id);
    expect(ids(shopWith([aFurtherStep('pack')], two))).toEqual(['P1', 'P2']);
    expect(ids(shopWith([aFurtherStep('pack', { placeId: 'P2' })], two))).toEqual(['P2']);
  });

  it('is not to be had for a piece longer than the bench takes', () => {
    const short = [aBrake(), aShear(), placeAt('pack', { maxLengthMm: 2000 })];
    const { unplannable } = operationsOf(shopWith([aFurtherStep('pack')], { machine: short }));
    expect(unplannable[0]?.message).toMatch(/^Line 1042\/1 fits no packing bench\. P1: A piece of/);
  });
});

describe('outside work', () => {
  const away = (days: number, own: Partial<Shop> = {}) => shopWith([aFurtherStep('outside', { days })], own);
  const sheared = (start: string, end: string) => [
    aRecord({ good: 20, scrapped: 0, start: at(start, '07:00'), end: at(start, '08:00') }),
    aRecord({
      id: '1042/1:brake',
      machineId: 'B1',
      ...{ good: 20, scrapped: 0, start: at(end, '13:00'), end: at(end, '14:00') },
    }),
  ];
  const sent = (date: string, clock: string) =>
    aRecord({
      id: '1042/1:outside',
      machineId: 'O1',
      good: 0,
      scrapped: 0,
      start: at(date, clock),
      end: null,
    });

  // Sent on a Thursday at 14:00, three working days: Friday, Monday, Tuesday.
  it('counts the days on which the outside shop is open, to the hour at which it was sent', () => {
    const record = [...sheared('2026-11-26', '2026-11-26'), sent('2026-11-26', '14:00')];
    expect(stepsOf(away(3, { record }))[0]?.end).toBe(at('2026-12-01', '14:00'));
  });

  it('counts calendar days where that is open every day', () => {
    const shifts = [{ ...aCalendar().shifts[0]!, days: [1, 2, 3, 4, 5, 6, 7] }];
    const calendar = [aCalendar(), aCalendar({ id: 'always', closures: [], overtime: [], shifts })];
    const machine = [aBrake(), aShear(), placeAt('outside', { calendarId: 'always' })];
    const record = [...sheared('2026-11-27', '2026-11-27'), sent('2026-11-27', '14:00')];
    expect(stepsOf(away(5, { calendar, machine, record }))[0]?.end).toBe(at('2026-12-02', '14:00'));
  });

  it('of two lines overlaps, and nobody of the shop is at work on it', () => {
    const shop = away(4);
    const { schedule, figures } = planned(shop);
    const [one, other] = schedule.operations.filter((o) => o.machine === 'O1');
    expect(one!.end).toBeGreaterThan(other!.start);
    expect(operation(shop, '1042/1:outside').people).toBe(0);
    expect(figures.workSeconds).toBe(planned(shopWith([])).figures.workSeconds);
  });

  it('has no order: a plan that only names it otherwise is the same plan', () => {
    const shop = away(4);
    const { queues } = must(toSearchProblem(shop, NOW));
    const turned = { ...queues, O1: queues['O1']!.toReversed() };
    const edit = must(
      applyCommand(shop, {
        do: 'plan.replace',
        queues: turned,
        label: 'Plan the week',
        seen: seenQueues(shop),
      }),
    );
    const rows = withChanges(shop, edit.changes).queue;
    expect(rows.find(({ id }) => id === 'O1')?.operations ?? queues['O1']).toEqual(queues['O1']);
  });

  it('that is overdue is expected any moment, not days later', () => {
    const record = [...sheared('2026-11-19', '2026-11-19'), sent('2026-11-19', '14:00')];
    expect(stepsOf(away(2, { record }))[0]?.end).toBe(NOW);
  });

  it('goes away whole, however blanks are passed on', () => {
    const flat = { ...aPart().profile, flangesMm: [150], bends: [] };
    const shop = shopWith([], {
      part: [aPart({ profile: flat, steps: [aFurtherStep('outside'), aFurtherStep('pack')] })],
    });
    const lots = { ...shop, settings: { ...shop.settings, transferShare: 0.25 } };
    const [shear, outside] = stepsOf(lots);
    expect(outside!.start).toBeGreaterThanOrEqual(shear!.end);
  });
});

describe('what is missing', () => {
  it('is the bench that lines ask for, added by one press', () => {
    const shop = shopWith([aFurtherStep('pack')], { machine: [aBrake(), aShear()] });
    const [missing] = missingToPlan(shop, NOW);
    expect(missing).toMatchObject({
      cause: 'bench',
      message: 'The shop has no packing bench. 2 lines wait for it.',
      lines: ['1042/1', '1042/2'],
    });
    expect(missing?.remedy?.label).toBe('Add a packing bench with usual figures');
  });
});

/** Shops of a few lines whose parts go through further steps at random, on benches with hours and changeovers of their own. */
const step = (stage: FurtherStage) =>
  fc.record({
    stage: fc.constant(stage),
    placeId: fc.constant(null),
    secondsPerPiece: stage === 'outside' ? fc.constant(null) : fc.option(fc.integer({ min: 0, max: 300 })),
    days: stage === 'outside' ? fc.option(fc.integer({ min: 1, max: 9 })) : fc.constant(null),
    note: fc.constant(''),
  });
const steps = fc
  .subarray([...FURTHER_STAGES])
  .chain((stages) => fc.tuple(...stages.map(step)) as fc.Arbitrary<RowOf<'part'>['steps']>);
const randomShop = fc
  .record({
    parts: fc.array(steps, { minLength: 1, maxLength: 3 }),
    lines: fc.array(fc.record({ part: fc.nat(), quantity: fc.integer({ min: 1, max: 60 }) }), {
      minLength: 1,
      maxLength: 6,
    }),
    transferShare: fc.constantFrom(1, 0.5),
    crewLimit: fc.constantFrom(null, 2, 3),
    second: fc.subarray([...FURTHER_STAGES]),
    profile: fc.constantFrom(0, 300),
  })
  .map(({ parts, lines, transferShare, crewLimit, second, profile }): Shop => {
    const shop = shopWith([], {
      part: parts.map((own, k) => aPart({ id: `part-${k}`, steps: own })),
      line: lines.map(({ part, quantity }, k) =>
        aLine({ number: k + 1, partId: `part-${part % parts.length}`, quantity }),
      ),
    });
    const attributes = { profile };
    const changeover = { combine: 'sum' as const, attributes, exceptions: [] };
    const more = second.map((stage) => placeAt(stage, { id: `${CODES[stage]}b`, changeover }));
    return {
      ...shop,
      machine: [...shop.machine, ...more],
      settings: { ...shop.settings, transferShare, crewLimit },
    };
  });

describe('random shops with further steps', () => {
  it('pass the independent checker as they stand, and after a search', () => {
    fc.assert(
      fc.property(randomShop, (shop) => {
        planned(shop);
        const { problem, queues } = must(toSearchProblem(shop, NOW));
        let best;
        for (const found of improve(problem, { seed: 1, start: queues })) {
          best = found;
          if (found.step >= 2) break;
        }
        expect(check(problem, best!.schedule)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
