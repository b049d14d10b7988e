import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { floorView } from '../../../core/report/floor.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aBrake, aLine, anOrder, aPart, aShear, aShop, NOW } from '../../support/builders.ts';
import { aBench, aFurtherStep } from '../../support/further-step-builders.ts';
import { finish, monday, start } from '../../support/floor-commands.ts';
import { must } from '../schedule/hand-shop.ts';

/** Two lines of twenty corners that are sheared, bent, sent away for two days and packed. */
const shop = aShop({
  part: [aPart({ steps: [aFurtherStep('pack'), aFurtherStep('outside', { days: 2 })] })],
  machine: [aBrake(), aShear(), aBench(), aBench({ id: 'O1', name: 'Coater', stage: 'outside' })],
  downtime: [],
  order: [anOrder()],
  line: [aLine(), aLine({ number: 2 })],
});

const done = (before: Shop, ...commands: Command[]): Shop =>
  commands.reduce((now, command) => withChanges(now, must(applyCommand(now, command)).changes), before);
function refusal(before: Shop, command: Command): string {
  const edit = applyCommand(before, command);
  if (edit.ok) throw new Error(`not refused: ${edit.value.label}`);
  return edit.issues.map((p) => `${p.message} ${p.advice}`).join(' ');
}
const bent = (line: string, from: string, to: string): Command[] => [
  start(`${line}:shear`, 'S1', from),
  finish(`${line}:shear`, from, 20),
  start(`${line}:brake`, 'B1', from),
  finish(`${line}:brake`, to, 20),
];
const both = done(shop, ...bent('1042/1', '07:00', '08:00'), ...bent('1042/2', '08:00', '09:00'));

describe('further steps on the floor', () => {
  it('wait for the step ahead of them, which is named', () => {
    expect(refusal(shop, start('1042/1:outside', 'O1', '07:00'))).toBe(
      'The pieces of line 1042/1 are not bent yet. The bending comes first.',
    );
    expect(refusal(both, start('1042/1:pack', 'P1', '09:00'))).toBe(
      'The pieces of line 1042/1 are not worked outside yet. The outside work comes first.',
    );
  });

  it('a bench does one line at a time', () => {
    const simple = { ...both, part: [aPart({ steps: [aFurtherStep('pack')] })] };
    const packing = done(simple, start('1042/1:pack', 'P1', '09:00'));
    expect(refusal(packing, start('1042/2:pack', 'P1', '09:10'))).toMatch(
      /^1042\/1 packing is still under way on P1\./,
    );
  });

  it('any number of lines are away at once, and come back in any order', () => {
    const away = done(both, start('1042/1:outside', 'O1', '09:30'), start('1042/2:outside', 'O1', '09:30'));
    const back = done(away, finish('1042/2:outside', '15:00', 20));
    expect(back.record.filter((r) => r.machineId === 'O1').map((r) => r.end)).toEqual([
      null,
      monday('15:00'),
    ]);
    expect(back.machine.find(({ id }) => id === 'O1')?.state).toBeNull();
    const view = floorView(away, must(viewPlan(away, NOW)), 'O1', monday('10:00'));
    expect(view?.running).toBeNull();
    expect(view?.queue.map(({ operation }) => operation.started !== null)).toEqual([true, true]);
  });

  it('work that is away is neither paused, changed over for nor pinned', () => {
    const away = done(both, start('1042/1:outside', 'O1', '09:30'));
    expect(
      refusal(away, { do: 'floor.pause', operation: '1042/1:outside', at: monday('10:00'), reason: 'Late' }),
    ).toMatch(/Report it done when it is back/);
    expect(
      refusal(both, {
        do: 'floor.changeover',
        operation: '1042/1:outside',
        machineId: 'O1',
        at: monday('10:00'),
      }),
    ).toMatch(/^Nothing is changed over for outside work/);
    expect(refusal(both, { do: 'operation.pin', operations: ['1042/1:outside'], seen: {} })).toMatch(
      /^Outside work has no order/,
    );
  });

  it('a line is done with its last step; pieces spoiled on the way are made again from the sheet on', () => {
    const end = done(
      both,
      start('1042/1:outside', 'O1', '09:30'),
      finish('1042/1:outside', '12:00', 18, 2),
      start('1042/1:pack', 'P1', '13:00'),
    );
    expect(end.line.map(({ id, status, quantity }) => [id, status, quantity])).toContainEqual([
      '1042/3',
      'open',
      2,
    ]);
    expect(end.record.find((r) => r.id === '1042/1:pack')?.quantity).toBe(18);
    const packed = done(end, finish('1042/1:pack', '14:00', 18));
    expect(packed.line.find(({ id }) => id === '1042/1')?.status).toBe('done');
  });

  it('what was counted of a step cannot be corrected below what the next one had', () => {
    const away = done(both, start('1042/1:outside', 'O1', '09:30'), finish('1042/1:outside', '12:00', 20));
    expect(
      refusal(away, {
        ...{ do: 'floor.correct', operation: '1042/1:brake', at: monday('13:00'), reason: 'Miscounted' },
        patch: { good: 15, scrapped: 5 },
      } as Command),
    ).toBe(
      '20 pieces of line 1042/1 are worked outside already, so 15 cannot be all that were good. Correct the outside work first.',
    );
  });
});

describe('rows of further steps', () => {
  it('a part names only benches that do such work', () => {
    const wrong = aPart({ steps: [aFurtherStep('pack', { placeId: 'O1' })], revision: 0 });
    expect(refusal(shop, { do: 'row.save', kind: 'part', row: wrong })).toMatch(/^O1 is no packing bench\./);
  });

  it('a bench that a part names is not removed under it', () => {
    const named = { ...shop, part: [aPart({ steps: [aFurtherStep('pack', { placeId: 'P1' })] })] };
    expect(refusal(named, { do: 'row.remove', kind: 'machine', id: 'P1', revision: 0 })).toMatch(
      /is used by part corner/,
    );
  });

  it('a bench needs neither length nor force; a shear still needs its plate', () => {
    const bench = aBench({ id: 'P2' });
    expect(applyCommand(shop, { do: 'row.save', kind: 'machine', row: bench }).ok).toBe(true);
    const shear = aShear({ id: 'S2', maxLengthMm: null });
    expect(refusal(shop, { do: 'row.save', kind: 'machine', row: shear })).toMatch(/needs its longest piece/);
  });
});
