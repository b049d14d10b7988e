import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aShop, at } from '../../support/builders.ts';

const shop = aShop();
const NOON = at('2026-12-01', '12:00');
type Change = Extract<Command, { do: 'standards.accept' }>['changes'][number];
const hits: Change = { key: 'hitLong', before: 16, after: 18.5, low: 17, high: 20, observations: 60 };
const gauge: Change = { key: 'gauge', before: 300, after: 412, low: 380, high: 450, observations: 12 };

const accept = (...changes: Change[]): Command => ({
  do: 'standards.accept',
  machineId: 'B1',
  at: NOON,
  changes,
});
const revert = (learnedId: string): Command => ({ do: 'standards.revert', learnedId, at: NOON + 60 });

function done(before: Shop, ...commands: Command[]): Shop {
  return commands.reduce((now, command) => {
    const edit = applyCommand(now, command);
    if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
    return withChanges(now, edit.value.changes);
  }, before);
}

function refusal(before: Shop, command: Command): string {
  const edit = applyCommand(before, command);
  if (edit.ok) throw new Error(`not refused: ${edit.value.label}`);
  return edit.issues.map((p) => p.message).join(' ');
}

const brake = (s: Shop) => s.machine.find((m) => m.id === 'B1');
const bending = (s: Shop) =>
  operationsOf(s).operations.find((o) => o.id === '1042/1:brake')?.machines[0]?.seconds ?? NaN;

describe('taking over what finished work shows', () => {
  it('changes the machine’s figures, so the plan’s times move', () => {
    const after = done(shop, accept(hits, gauge));
    expect(brake(after)?.standards).toEqual({ firstPiece: 90, hitLong: 18.5 });
    expect(brake(after)?.changeover.attributes).toEqual({ profile: 900, gauge: 412 });
    expect(bending(after)).toBeGreaterThan(bending(shop));
  });

  it('keeps what each change rests on', () => {
    expect(done(shop, accept(hits)).learned).toEqual([
      { ...hits, id: 'B1.hitLong.1', machineId: 'B1', at: NOON, revertedAt: null, revision: 1 },
    ]);
  });

  it('can be undone', () => {
    const edit = applyCommand(shop, accept(hits, gauge));
    if (!edit.ok) throw new Error('refused');
    const back = withChanges(withChanges(shop, edit.value.changes), invert(edit.value.changes));
    expect(back.machine).toEqual(shop.machine);
    expect(back.learned).toEqual([]);
  });

  it('is refused when the figure is another one by now', () => {
    expect(refusal(done(shop, accept(hits)), accept(hits))).toMatch(
      /Hit, piece over 6 ft of B1 is 18\.5 s by now, not 16 s/,
    );
  });

  it('is refused for what the machine does not have, for nothing, and for one figure twice', () => {
    expect(refusal(shop, accept({ ...hits, key: 'sheetLoad' }))).toMatch(/B1 has no figure “sheetLoad”/);
    expect(refusal(shop, accept({ ...gauge, key: 'colour' }))).toMatch(/B1 has no figure “colour”/);
    expect(refusal(shop, accept({ ...hits, after: 0 }))).toMatch(/cannot be 0/);
    expect(refusal(shop, accept(hits, hits))).toMatch(/proposed twice/);
    expect(refusal(shop, { do: 'standards.accept', machineId: 'X9', at: NOON, changes: [hits] })).toMatch(
      /no machine X9/,
    );
  });
});

describe('putting a figure back', () => {
  const learned = done(shop, accept(hits, gauge));

  it('brings back what stood before, the default as a default, and says since when', () => {
    const after = done(learned, revert('B1.hitLong.1'), revert('B1.gauge.1'));
    expect(brake(after)?.standards).toEqual({ firstPiece: 90 });
    expect(brake(after)?.changeover.attributes).toEqual({ profile: 900, gauge: 300 });
    expect(after.learned.map((l) => l.revertedAt)).toEqual([NOON + 60, NOON + 60]);
    expect(bending(after)).toBe(bending(shop));
  });

  it('is refused twice, and when the figure was changed since', () => {
    expect(refusal(done(learned, revert('B1.hitLong.1')), revert('B1.hitLong.1'))).toMatch(
      /put back already/,
    );
    const again = done(learned, accept({ ...hits, before: 18.5, after: 19 }));
    expect(again.learned.map((l) => l.id)).toContain('B1.hitLong.2');
    expect(refusal(again, revert('B1.hitLong.1'))).toMatch(/was changed since, to 19/);
  });
});
