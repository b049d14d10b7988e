import { err, issue, ok, type Result } from '../result.ts';
import { change, sameContent, type Edit, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Command, Remembered } from './command.ts';
import { rowName } from './row-name.ts';
import { staleIssue } from './stale.ts';

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

/** Takes another name or a layout away: what it said is asked again with the next file. Rows that came in by it stay. */
export function forgetMemory(
  shop: Shop,
  { kind, id, revision }: Extract<Command, { readonly do: 'memory.forget' }>,
): Result<Edit> {
  const row = shop[kind].find((one) => one.id === id);
  if (!row)
    return err(
      issue(id, kind, 'That is not remembered any more.', 'Somebody forgot it before; nothing to do.'),
    );
  const subject = kind === 'otherName' ? 'other name' : 'way in which such files are read';
  const stale = staleIssue(kind, subject, row, { id, revision, removed: true });
  if (stale) return err(stale);
  return ok({ label: `Forget ${rowName(kind, id)}`, changes: [change(kind, row, null)] });
}
