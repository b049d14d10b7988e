import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { crewLimits } from '../../../core/planning/crew-limits.ts';
import type { Absence } from '../../../core/shop/machine.ts';
import { sentence, type Result } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { NOW } from '../../support/builders.ts';

const demo = loadDemo(join(import.meta.dirname, '../../../demo-data/shop'), NOW);
const out = (own: Partial<Record<keyof Absence, number | string>>): Absence =>
  ({ id: 'out-1', people: 1, from: 100, to: 200, reason: '', revision: 0, ...own }) as Absence;
const counting = (crewLimit: number | null, absence: Absence[] = []): Shop => ({
  ...demo,
  settings: { ...demo.settings, crewLimit },
  absence,
});
const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
};

describe('how many people may work at once', () => {
  it('is what the shop counts, less those who are out while they are', () => {
    expect(crewLimits(counting(4, [out({ people: 3, from: 100, to: 200 })]), 1000)).toEqual([
      { start: 0, end: 100, people: 4 },
      { start: 100, end: 200, people: 1 },
      { start: 200, end: 1000, people: 4 },
    ]);
  });

  it('adds up who is out at the same time; nobody is left when that is everybody or more', () => {
    const two = [out({ people: 1, from: 100, to: 300 }), out({ id: 'out-2', people: 2, from: 200, to: 400 })];
    expect(crewLimits(counting(2, two), 1000)!.map(({ people }) => people)).toEqual([2, 1, 0, 0, 2]);
  });

  it('is not limited where people are not counted', () => {
    expect(crewLimits(counting(null, [out({})]), 1000)).toBeNull();
  });

  it('at any instant is the count less those out then, whatever overlaps', () => {
    const span = fc.tuple(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 1, max: 400 }));
    const spans = fc.array(fc.tuple(span, fc.integer({ min: 1, max: 5 })), { maxLength: 6 });
    fc.assert(
      fc.property(spans, fc.integer({ min: 0, max: 999 }), (all, at) => {
        const absence = all.map(([[from, length], people], k) =>
          out({ id: `out-${k}`, people, from, to: from + length }),
        );
        const limits = crewLimits(counting(6, absence), 1000)!;
        const missing = absence.filter(({ from, to }) => from <= at && at < to);
        const left = Math.max(
          0,
          missing.reduce((left, { people }) => left - people, 6),
        );
        expect(limits.filter(({ start, end }) => start <= at && at < end)).toMatchObject([{ people: left }]);
      }),
    );
  });
});

describe('a plan with people out', () => {
  const days = { from: NOW + 3600, to: NOW + 27 * 3600 };
  const planOf = (shop: Shop) => {
    const { problem, queues } = valueOf(toProblem(shop, NOW));
    return { problem, schedule: valueOf(decode(problem, queues)) };
  };

  it('does nothing that has not begun while everybody is out, and passes the checker', () => {
    const { problem, schedule } = planOf(counting(2, [out({ people: 2, ...days })]));
    const during = schedule.operations.filter(
      ({ changeoverStart, end }) => changeoverStart < days.to && end > days.from,
    );
    const started = new Set(demo.record.map(({ id }) => id));
    expect(during.filter(({ operation }) => !started.has(operation))).toEqual([]);
    expect(check(problem, schedule)).toEqual([]);
  });

  it('ends later with one of two out, and the checker refuses the plan that counts on both', () => {
    const full = planOf(counting(2));
    const short = planOf(counting(2, [out({ people: 1, ...days })]));
    expect(short.schedule.terms.flowTime).toBeGreaterThan(full.schedule.terms.flowTime);
    expect(check(short.problem, short.schedule)).toEqual([]);
    expect(check(short.problem, full.schedule).map(({ rule }) => rule)).toContain('crew');
  });
});

describe('saving that people are out', () => {
  const save = (shop: Shop, row: Absence) => applyCommand(shop, { do: 'row.save', kind: 'absence', row });

  it('is one step that adds one row', () => {
    const saved = valueOf(save(counting(3), out({ people: 2 })));
    expect(saved.label).toBe('Add absence out-1');
    expect(saved.changes).toMatchObject([{ kind: 'absence', before: null, after: { people: 2 } }]);
  });

  it('is refused for more people than are counted, and where nobody is counted', () => {
    const refusal = (shop: Shop, people: number) => {
      const saved = save(shop, out({ people }));
      return saved.ok ? '' : sentence(saved.issues);
    };
    expect(refusal(counting(3), 4)).toMatch(/4 people cannot be out: 3 work at once/);
    expect(refusal(counting(null), 1)).toMatch(
      /not counted in this shop\. Add a downtime for the stopped machine/,
    );
    expect(refusal(counting(3), 3)).toBe('');
  });
});
