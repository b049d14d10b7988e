import { change, sameContent, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Remembered } from './command.ts';

/** What is kept of how a file was read; what was kept before of the same texts and the same shape gives way to it. */
export function memoryChanges(shop: Shop, remembered: Remembered | undefined): RowChange[] {
  if (!remembered) return [];
  const { names, layout } = remembered;
  const layoutBefore = shop.fileLayout.find(({ id }) => id === layout.id) ?? null;
  const changes = names.flatMap((name): RowChange[] => {
    const before = shop.otherName.find(({ id }) => id === name.id) ?? null;
    return sameContent(before, name) ? [] : [change('otherName', before, name)];
  });
  return sameContent(layoutBefore, layout)
    ? changes
    : [...changes, change('fileLayout', layoutBefore, layout)];
}
