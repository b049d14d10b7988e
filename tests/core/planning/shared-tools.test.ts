import fc from 'fast-check';
import { expect, it } from 'vitest';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { improve } from '../../../core/schedule/improve.ts';
import type { Schedule } from '../../../core/schedule/problem.ts';
import { Rng } from '../../../core/rng.ts';
import { aBrake, aLine, aPart, aShear, aShop, NOW } from '../../support/builders.ts';
import { aTool } from '../../support/tool-builders.ts';
import { must, seeds } from '../schedule/hand-shop.ts';

const BRAKES = ['B1', 'B2'];
const hemmed = aPart({
  profile: { ...aPart().profile, startHem: { kind: 'closed', lengthMm: 12, direction: 'up' } },
});
const open = aPart({ id: 'open', name: 'Open' });
const tool = [
  ...BRAKES.flatMap((id) => [
    aTool({ id: `${id}-V8`, openingMm: 8, machineIds: [id] }),
    aTool({ id: `${id}-P`, kind: 'punch', openingMm: null, machineIds: [id] }),
  ]),
  aTool({ id: 'H', kind: 'hemming', openingMm: null, angleDeg: null, machineIds: BRAKES }),
];

/** Eight lines, with hems or without as the lots fall, on a shear and two brakes that share the hemming tools. */
function shopOf(rng: Rng) {
  const line = Array.from({ length: 8 }, (_, k) =>
    aLine({
      id: `1042/${k + 1}`,
      partId: rng.next() < 0.6 ? hemmed.id : open.id,
      quantity: 10 + rng.below(200),
    }),
  );
  const changeover = { combine: 'sum' as const, attributes: { hemming: 300 }, exceptions: [] };
  const machine = [aShear(), ...BRAKES.map((id) => aBrake({ id, name: id, tonnes: 200, changeover }))];
  return aShop({ machine, tool, part: [hemmed, open], line, order: aShop().order.slice(0, 1) });
}

/** Pairs of hemmed lines that are set up or bent on both brakes in the same second, read off the lines' parts. */
function together(schedule: Schedule, hems: ReadonlySet<string>): string[] {
  const bent = schedule.operations.filter((o) => BRAKES.includes(o.machine) && hems.has(o.job));
  return bent.flatMap((a) =>
    bent
      .filter((b) => a.machine < b.machine && a.changeoverStart < b.end && b.changeoverStart < a.end)
      .map((b) => `${a.operation} and ${b.operation}`),
  );
}

/** Changeovers of the brakes, the whereabouts of the hemming tools read off the lines' parts and the clock. */
function hemChangeovers(schedule: Schedule, hems: ReadonlySet<string>): Record<string, number> {
  const bent = schedule.operations.filter((o) => BRAKES.includes(o.machine));
  const seconds = bent.map((o) => {
    const own = bent.filter((b) => b.machine === o.machine && b.end <= o.changeoverStart && b !== o);
    const hemmedBefore = bent.filter((b) => hems.has(b.job) && b.end <= o.changeoverStart && b !== o);
    const last = hemmedBefore.toSorted((a, b) => b.end - a.end)[0];
    const before = own.toSorted((a, b) => b.end - a.end)[0];
    const differs = before !== undefined && hems.has(before.job) !== hems.has(o.job);
    const elsewhere = hems.has(o.job) && last !== undefined && last.machine !== o.machine;
    return [o.operation, differs || elsewhere ? 300 : 0] as const;
  });
  return Object.fromEntries(seconds);
}

it('hemming tools that two brakes share are never at both, and are fetched back by a changeover: not by any order of the queues, not in a plan of the search', () => {
  const used = new Set<string>();
  fc.assert(
    fc.property(seeds, (seed) => {
      const rng = new Rng(seed);
      const shop = shopOf(rng);
      const { problem, queues } = must(toProblem(shop, NOW));
      const hems = new Set(shop.line.filter(({ partId }) => partId === hemmed.id).map(({ id }) => id));
      const bends = rng.shuffled(
        Object.values(queues)
          .flat()
          .filter((id) => id.endsWith(':brake')),
      );
      const cut = rng.below(bends.length + 1);
      const drawn = { ...queues, B1: bends.slice(0, cut), B2: bends.slice(cut) };
      const schedules = [must(decode(problem, drawn))];
      for (const found of improve(problem, { seed, start: drawn })) {
        schedules.push(found.schedule);
        if (found.step >= 1) break;
      }
      for (const schedule of schedules) {
        expect(together(schedule, hems)).toEqual([]);
        const bent = schedule.operations.filter((o) => BRAKES.includes(o.machine));
        const needed = hemChangeovers(schedule, hems);
        expect(Object.fromEntries(bent.map((o) => [o.operation, o.changeoverSeconds]))).toEqual(needed);
        for (const o of schedule.operations) if (hems.has(o.job)) used.add(o.machine);
      }
    }),
    { numRuns: 40 },
  );
  expect([...used].sort()).toEqual(['B1', 'B2', 'S1']);
});
