import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import { otherNameId } from '../../../core/shop/other-name.ts';
import { aShop } from '../../support/builders.ts';
import { after, editOf, refusalOf } from '../../support/edits.ts';

const ral = {
  id: otherNameId('colour', 'RAL 7016'),
  kind: 'colour' as const,
  text: 'RAL 7016',
  oursId: 'moss',
  revision: 3,
};
const layout = {
  id: 'orders:4:0badcafe',
  kind: 'orders' as const,
  layout: { columns: { order: 'Job No' }, units: {}, dates: {}, decimals: {}, toNote: [] },
  revision: 1,
};
const shop = aShop({ otherName: [ral], fileLayout: [layout] });
const forget = (kind: 'otherName' | 'fileLayout', id: string, revision: number): Command => ({
  do: 'memory.forget',
  kind,
  id,
  revision,
});

describe('what was remembered of files', () => {
  it('is forgotten one by one, and undo brings it back', () => {
    const edit = editOf(shop, forget('otherName', ral.id, ral.revision));
    const without = withChanges(shop, edit.changes);
    expect(without.otherName).toEqual([]);
    expect(without.fileLayout).toEqual([layout]);
    expect(edit.label).toBe('Forget the other name “ral 7016”');
    expect(withChanges(without, invert(edit.changes)).otherName).toEqual([ral]);
    expect(after(shop, forget('fileLayout', layout.id, layout.revision)).fileLayout).toEqual([]);
  });

  it('stays where it was said anew meanwhile, or is gone already', () => {
    expect(refusalOf(shop, forget('otherName', ral.id, 2))).toMatch(/The other name was changed meanwhile/);
    expect(refusalOf(shop, forget('fileLayout', 'orders:1:00000000', 1))).toMatch(/not remembered any more/);
  });
});
