import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Part } from '../../../core/part/part.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, aPart, aShop } from '../../support/builders.ts';
import { madeFrom } from '../../support/edits.ts';

const cap = aPart({ id: 'cap', profile: { ...aPart().profile, flangesMm: [50, 120] } });
const size = (partId: string, ...lengthsMm: number[]) => ({ partId, name: `Cap ${partId}`, lengthsMm });
const pattern = (...sizes: ReturnType<typeof size>[]): Part => ({
  ...cap,
  family: { is: 'pattern', dimensions: [{ name: 'Leg', flanges: [2] }], sizes },
});

function save(shop: Shop, row: Part) {
  const edit = applyCommand(shop, { do: 'row.save', kind: 'part', row });
  if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join());
  return { edit: edit.value, shop: withChanges(shop, edit.value.changes) };
}
const refusal = (shop: Shop, row: Part): string => {
  const edit = applyCommand(shop, { do: 'row.save', kind: 'part', row });
  return edit.ok ? 'taken' : edit.issues.map((p) => p.message).join();
};
const partIn = (shop: Shop, id: string) => shop.part.find((p) => p.id === id);

const start = aShop({ part: [...aShop().part, cap] });
const family = save(start, pattern(size('cap-150', 150), size('cap-200', 200))).shop;

describe('a family of sizes', () => {
  it('is a part of each size: the pattern’s shape but for the named length', () => {
    expect(partIn(family, 'cap-150')).toMatchObject({
      name: 'Cap cap-150',
      profile: { ...cap.profile, flangesMm: [50, 150] },
      family: { is: 'size', of: 'cap' },
    });
    expect(partIn(family, 'cap-200')?.profile.flangesMm).toEqual([50, 200]);
    expect(partIn(family, 'cap')?.profile.flangesMm).toEqual([50, 120]);
  });

  it('is one edit, which one undo takes back whole', () => {
    const { edit, shop } = save(start, pattern(size('cap-150', 150)));
    expect(edit.label).toBe('Change part cap and 1 size of it');
    const back = withChanges(shop, invert(edit.changes));
    expect(back.part.map((p) => p.id)).toEqual(start.part.map((p) => p.id).sort());
    expect(partIn(back, 'cap')?.family).toBeNull();
  });

  it('takes a changed shape to every size, whose own length and note stay', () => {
    const member = { ...partIn(family, 'cap-150')!, lengthMm: 1234, note: 'Mind the paint.' };
    const own = save(family, member).shop;
    const stands = partIn(own, 'cap')!;
    const bent = { ...stands, profile: { ...stands.profile, flangesMm: [60, 120] } };
    const { shop } = save(own, bent);
    expect(partIn(shop, 'cap-150')).toMatchObject({
      profile: { flangesMm: [60, 150] },
      lengthMm: 1234,
      note: 'Mind the paint.',
    });
  });

  it('refuses a shape changed on a size, a code that another part has, and the end of a size on order', () => {
    const member = partIn(family, 'cap-150')!;
    expect(refusal(family, { ...member, profile: cap.profile })).toMatch(/come from its pattern cap/);
    const stands = partIn(family, 'cap')!;
    expect(refusal(start, pattern(size('corner', 90)))).toBe(
      'The code corner already belongs to another part.',
    );
    const ordered = { ...family, line: [...family.line, aLine({ number: 9, partId: 'cap-200' })] };
    expect(refusal(ordered, { ...pattern(size('cap-150', 150)), revision: stands.revision })).toMatch(
      /cap-200 is asked for by line 1042\/9/,
    );
  });

  it('lets a size leave and be a part of its own; the pattern’s table no longer lists it', () => {
    const { shop } = save(family, { ...partIn(family, 'cap-150')!, family: null });
    expect(partIn(shop, 'cap-150')?.family).toBeNull();
    const left = partIn(shop, 'cap')?.family;
    expect(left?.is === 'pattern' && left.sizes.map((s) => s.partId)).toEqual(['cap-200']);
  });

  it('ends with its pattern, and leaves every size as a part', () => {
    const { shop } = save(family, { ...partIn(family, 'cap')!, family: null });
    for (const id of ['cap', 'cap-150', 'cap-200']) expect(partIn(shop, id)?.family).toBeNull();
  });

  it('is not removed while it has sizes; a removed size goes from the table', () => {
    const remove = (id: string) =>
      applyCommand(family, madeFrom(family, { do: 'row.remove', kind: 'part', id }));
    expect(remove('cap')).toMatchObject({ ok: false });
    const gone = remove('cap-200');
    if (!gone.ok) throw new Error('refused');
    const shop = withChanges(family, gone.value.changes);
    const left = partIn(shop, 'cap')?.family;
    expect(partIn(shop, 'cap-200')).toBeUndefined();
    expect(left?.is === 'pattern' && left.sizes.map((s) => s.partId)).toEqual(['cap-150']);
  });
});
