import { describe, expect, it } from 'vitest';
import { floorView } from '../../../core/report/floor.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aRecord, aShear, aBrake, aShop, at } from '../../support/builders.ts';

const NOW = at('2026-11-30', '07:30');
const shop = aShop({
  order: [anOrder()],
  line: [aLine(), aLine({ number: 2, gauge: '26' }), aLine({ number: 3 })],
  machine: [aBrake(), aShear({ state: { material: 'galv', gauge: '24', colour: 'moss' } })],
  queue: [
    aQueue({ operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear'] }),
    aQueue({ id: 'B1', operations: ['1042/1:brake', '1042/2:brake', '1042/3:brake'] }),
  ],
});

function floor(machineId: string, own: Partial<Shop> = {}) {
  const now = { ...shop, ...own };
  const plan = viewPlan(now, NOW);
  if (!plan.ok) throw new Error(plan.issues.map((p) => p.message).join(' '));
  return floorView(now, plan.value, machineId, NOW);
}

describe('a machine’s floor screen', () => {
  it('has its queue in order, with what to change before the next', () => {
    const view = floor('S1');
    expect(view?.queue.map(({ row }) => row.operationId)).toEqual([
      '1042/1:shear',
      '1042/2:shear',
      '1042/3:shear',
    ]);
    expect(view?.queue.map(({ changeover }) => changeover?.steps ?? [])).toEqual([
      [],
      [{ attribute: 'gauge', from: '24 ga', to: '26 ga' }],
      [{ attribute: 'gauge', from: '26 ga', to: '24 ga' }],
    ]);
    expect(view?.running).toBeNull();
  });

  it('says why bending cannot begin yet', () => {
    expect(floor('B1')?.queue[0]?.notYet).toMatch(/blanks of line 1042\/1 are not sheared yet/);
    expect(floor('S1')?.queue[0]?.notYet).toBeNull();
    const sheared = [aRecord({ good: 20, scrapped: 0, end: at('2026-11-30', '07:20') })];
    expect(floor('B1', { record: sheared })?.queue[0]?.notYet).toBeNull();
  });

  it('has what is under way first, and on no other machine', () => {
    const record = [aRecord({ id: '1042/3:shear', start: at('2026-11-30', '07:10'), end: null, good: 3 })];
    const view = floor('S1', { record });
    expect(view?.running?.id).toBe('1042/3:shear');
    expect(view?.queue[0]?.row.operationId).toBe('1042/3:shear');
    expect(floor('B1', { record })?.running).toBeNull();
  });

  it('says how long it was worked on, the night left out', () => {
    const record = [aRecord({ start: at('2026-11-27', '15:00'), end: null, good: 3 })];
    expect(floor('S1', { record })?.queue.map((work) => work.workedSeconds)).toEqual([3600, 0, 0]);
  });

  it('keeps sight of work under way whose order was held meanwhile', () => {
    const record = [aRecord({ start: at('2026-11-30', '07:10'), end: null, good: 3 })];
    const view = floor('S1', { record, order: [anOrder({ status: 'held' })] });
    expect(view?.running?.id).toBe('1042/1:shear');
    expect(view?.queue).toEqual([]);
  });

  it('counts only what begins in the day', () => {
    expect(floor('S1', { line: [] })?.today).toBeNull();
    const view = floor('S1');
    const evening = at('2026-12-01', '00:00');
    const rows = view?.queue.map(({ row }) => row).filter((row) => row.start < evening) ?? [];
    expect(rows.length).toBeGreaterThan(0);
    expect(view?.today).toEqual({
      operations: rows.length,
      pieces: rows.length * 20,
      until: rows.reduce((last, row) => Math.max(last, row.end), 0),
    });
  });

  it('is none for a machine that is not there', () => {
    expect(floor('X9')).toBeNull();
  });
});
