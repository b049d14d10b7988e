import { expect, it } from 'vitest';
import { rowName } from '../../../core/edit/row-name.ts';
import { rowKinds, type RowKind } from '../../../core/shop/state.ts';

const ids: Partial<Record<RowKind, string>> = {
  record: '1042/1:shear',
  pin: '1042/1:brake',
  cutList: '1042/1 1764500000',
  movement: '000001764500000',
  learned: 'B1.hitLong.1764500000',
};

it('every kind of row has a name that people say: no key of the code, no moment in seconds', () => {
  for (const kind of Object.keys(rowKinds) as RowKind[]) {
    const name = rowName(kind, ids[kind] ?? 'moss');
    expect(name, kind).not.toMatch(/\d{9}|:shear|:brake|cutList/);
    expect(name.length).toBeGreaterThan(4);
  }
  expect(rowName('cutList', ids.cutList!)).toBe('the list of cuts of run 1042/1');
  expect(rowName('colour', 'moss')).toBe('colour moss');
});
