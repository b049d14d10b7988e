import type { SheetGroup } from '../cutting/plan.ts';
import { blankSizes, hundredth, type RunLine } from '../cutting/run.ts';
import type { CutStep } from '../cutting/step.ts';
import { err, issue, ok, type Result } from '../result.ts';
import { change, type Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { KeptList } from '../shop/stock.ts';
import { refuseStale, staleIssue } from './stale.ts';

/** A list as it is kept under a name: sheets and steps, without the lines that it was made for. */
export const keptListOf = (
  name: string,
  groups: readonly SheetGroup[],
  steps: readonly CutStep[],
  revision: number,
): KeptList => ({
  id: name,
  groups: groups.map((group) => ({ ...group, blanks: [], offcuts: [] })),
  steps: steps.map((step) => ({ ...step, lines: [] })),
  revision,
});

/** Keep a list under a name; one that is kept under it already gives way. */
export function keepList(shop: Shop, list: KeptList): Result<Edit> {
  const before = shop.keptList.find(({ id }) => id === list.id) ?? null;
  const stale = refuseStale('keptList', `list “${list.id}”`, before, list);
  if (stale) return stale;
  return ok({ label: `Keep a list as “${list.id}”`, changes: [change('keptList', before, list)] });
}

/** Runs that use it have a copy of their own, which stays. */
export function forgetList(shop: Shop, { id, revision }: Pick<KeptList, 'id' | 'revision'>): Result<Edit> {
  const before = shop.keptList.find((list) => list.id === id);
  if (!before)
    return err(issue(`list ${id}`, 'name', `There is no list “${id}”.`, 'It may have been removed already.'));
  const stale = staleIssue('keptList', `list “${id}”`, before, { id, revision, removed: true });
  if (stale) return err(stale);
  return ok({ label: `Remove the list “${id}”`, changes: [change('keptList', before, null)] });
}

/**
 * How many times over a kept list gives exactly what lines ask, extra pieces that they accept included; null: it gives other
 * sizes, or other shares of them.
 */
export function timesFor({ steps }: Pick<KeptList, 'steps'>, lines: readonly RunLine[]): number | null {
  const sizes = blankSizes({ lines });
  const made = blanksIn(steps);
  const [first] = sizes;
  if (!first || made.size !== sizes.length) return null;
  const times = Math.ceil(first.quantity / (made.get(sizeKey(first)) ?? Infinity));
  const fits = sizes.every((size) => {
    const pieces = times * (made.get(sizeKey(size)) ?? 0);
    return pieces >= size.quantity && pieces <= size.quantity + size.overrun;
  });
  return fits && times > 0 ? times : null;
}

/** A list's sheets for so many times what it gives. */
export const timesOver = (groups: readonly SheetGroup[], times: number): SheetGroup[] =>
  groups.map((group) => ({ ...group, count: times * group.count }));

type Size = { readonly girthMm: number; readonly lengthMm: number };
const sizeKey = ({ girthMm, lengthMm }: Size): string => `${hundredth(girthMm)}×${hundredth(lengthMm)}`;

/** Blanks that steps give, by size. */
function blanksIn(steps: readonly CutStep[]): Map<string, number> {
  const made = new Map<string, number>();
  const add = (to: CutStep['rest'], pieces: number): void => {
    if (to?.kind === 'blank') made.set(sizeKey(to), (made.get(sizeKey(to)) ?? 0) + pieces);
  };
  for (const { to, rest, fed, cutsEach } of steps) {
    add(cutsEach > 0 ? to : null, fed * cutsEach);
    add(rest, fed);
  }
  return made;
}
