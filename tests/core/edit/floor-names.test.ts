import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { command, type Command } from '../../../core/edit/command.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aShop, at, someSettings } from '../../support/builders.ts';

const silent = aShop({ order: [anOrder()], line: [aLine()] });
const asking: Shop = { ...silent, settings: someSettings({ askWho: true }) };
const id = '1042/1:shear';

const started = (who?: string): Command => ({
  do: 'floor.start',
  operation: id,
  machineId: 'S1',
  at: at('2026-11-30', '07:00'),
  changeoverSeconds: null,
  who,
});
const ended = (who?: string): Command => ({
  do: 'floor.done',
  operation: id,
  at: at('2026-11-30', '08:00'),
  good: 20,
  scrapped: 0,
  who,
});

/** The names on the record after an operation was started and done. */
function namesAfter(shop: Shop, ...commands: Command[]): readonly string[] | undefined {
  const after = commands.reduce((stands, asked) => {
    const edit = applyCommand(stands, asked);
    if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
    return withChanges(stands, edit.value.changes);
  }, shop);
  return after.record.find((r) => r.id === id)?.who;
}

describe('who ran an operation', () => {
  it('is kept where the shop asks: whoever began it, then whoever ended it, nobody twice', () => {
    expect(namesAfter(asking, started('Ada'), ended('Ada'))).toEqual(['Ada']);
    expect(namesAfter(asking, started('Ada'), ended('Bo'))).toEqual(['Ada', 'Bo']);
  });

  it('is never needed', () => {
    expect(namesAfter(asking, started(), ended())).toEqual([]);
    expect(namesAfter(asking, started(), ended('Bo'))).toEqual(['Bo']);
  });

  it('is not kept while the shop does not ask, even when it is told', () => {
    expect(namesAfter(silent, started('Ada'), ended('Ada'))).toEqual([]);
  });

  it('stays on work that is ended after the shop stopped asking', () => {
    const edit = applyCommand(asking, started('Ada'));
    if (!edit.ok) throw new Error('not begun');
    const later = { ...withChanges(asking, edit.value.changes), settings: silent.settings };
    expect(namesAfter(later, ended('Bo'))).toEqual(['Ada']);
  });

  it('holds no semicolon, which parts names in files', () => {
    expect(command.safeParse(started('Ada; Bo')).success).toBe(false);
    expect(command.safeParse(started(' Ada ')).data).toMatchObject({ who: 'Ada' });
  });
});
