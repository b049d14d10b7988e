import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Command } from '../../../core/edit/command.ts';
import { openLines } from '../../../renderer/screens/what-if/rush-facts.ts';
import {
  machineBack,
  stoppedHours,
  stoppedUntil,
} from '../../../renderer/screens/what-if/trouble-entries.ts';
import { instant } from '../../../core/units/brand.ts';
import { aDowntime, aLine, anOrder, aRecord, aShop, NOW } from '../../support/builders.ts';

const HOUR = 3600;
const stop = aDowntime({ from: NOW, to: NOW + 4 * HOUR });
const shop = aShop({ downtime: [stop] });

function after(command: Command) {
  const edit = applyCommand(shop, command);
  if (!edit.ok) throw new Error(edit.issues.map(({ message }) => message).join());
  return withChanges(shop, edit.value.changes).downtime;
}

describe('a machine that was stopped', () => {
  it('is back early: its hours end now, so that what they cost stays on record', () => {
    expect(after(machineBack(stop, instant(NOW + HOUR)))).toMatchObject([
      { id: stop.id, from: NOW, to: NOW + HOUR },
    ]);
  });

  it('does not stop at all when its hours have not begun', () => {
    expect(after(machineBack(stop, NOW))).toEqual([]);
  });

  it('stands longer', () => {
    expect(after(stoppedUntil(stop, NOW + 6 * HOUR))).toMatchObject([{ from: NOW, to: NOW + 6 * HOUR }]);
  });

  it('is told of only while its hours are not over', () => {
    expect(stoppedHours(shop, NOW + 3 * HOUR)).toEqual([stop]);
    expect(stoppedHours(shop, NOW + 4 * HOUR)).toEqual([]);
  });
});

describe('lines of which a rush can be made', () => {
  it('are open, of an open order, and not begun, marked rush or not', () => {
    const lines = aShop({
      order: [anOrder({ id: '1042' }), anOrder({ id: '1043', status: 'held' })],
      line: [
        aLine({ orderId: '1042' }),
        aLine({ orderId: '1042', number: 2 }),
        aLine({ orderId: '1042', number: 3, status: 'cancelled' }),
        aLine({ orderId: '1043' }),
      ],
      record: [aRecord({ id: '1042/2:shear' })],
    });
    expect(openLines(lines)).toEqual(['1042/1']);
  });
});
