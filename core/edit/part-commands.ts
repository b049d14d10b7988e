import { sizeOf, type Pattern } from '../part/family.ts';
import { shortStageName } from '../part/stage.ts';
import type { Part } from '../part/part.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { change, sameContent, type RowChange, type Edit } from '../shop/row-change.ts';
import { counted } from '../units/count.ts';

const byId = (shop: Shop, id: string): Part | null => shop.part.find((p) => p.id === id) ?? null;
const patternIn = (part: Part | null): Pattern | null =>
  part?.family?.is === 'pattern' ? part.family : null;
const withoutSize = (pattern: Part, partId: string): Part => {
  const family = patternIn(pattern);
  return family
    ? { ...pattern, family: { ...family, sizes: family.sizes.filter((size) => size.partId !== partId) } }
    : pattern;
};

/**
 * Save a part, with what hangs on it in one edit: a pattern makes, changes and removes the parts of its sizes; a size
 * that leaves its family leaves the pattern's table too; a pattern that ends its family leaves its sizes as parts.
 * @param before the part as it is; null when it is new
 */
export function savePart(shop: Shop, before: Part | null, row: Part): Result<Edit> {
  const refusals = [...(row.family?.is === 'size' ? againstSize(shop, row) : []), ...strayPlaces(shop, row)];
  const members = memberChanges(shop, before, row);
  if (!members.ok) return members;
  if (refusals.length > 0) return err(...refusals);
  const left = leftFamily(shop, before, row);
  const changes = [change('part', before, row), ...members.value, ...left];
  const sizes = members.value.length;
  const more = sizes === 0 ? '' : ` and ${counted(sizes, 'size')} of it`;
  return ok({ label: `${before ? 'Change' : 'Add'} part ${row.id}${more}`, changes });
}

/** A step names a bench or an outside shop that does such work, or none. */
const strayPlaces = (shop: Shop, { id, steps }: Part): Issue[] =>
  steps.flatMap(({ stage, placeId }) => {
    const place = shop.machine.find((machine) => machine.id === placeId);
    if (placeId === null || place?.stage === stage) return [];
    const message = place
      ? `${placeId} is no ${shortStageName(stage)}.`
      : `There is no ${shortStageName(stage)} ${placeId}.`;
    return [issue(`part ${id}`, 'steps', message, 'Choose one that there is, or any.')];
  });

/** Remove a part; a size goes from its pattern's table as well. */
export function partRemoval(shop: Shop, part: Part): RowChange[] {
  const left = part.family?.is === 'size' ? leftFamily(shop, part, { ...part, family: null }) : [];
  return [change('part', part, null), ...left];
}

/** The shape of a size is its pattern's business. */
function againstSize(shop: Shop, row: Part): Issue[] {
  const of = row.family?.is === 'size' ? row.family.of : '';
  const pattern = byId(shop, of);
  const family = patternIn(pattern);
  const size = family?.sizes.find(({ partId }) => partId === row.id);
  if (!pattern || !family || !size)
    return [
      issue(
        `part ${row.id}`,
        'family',
        `Part ${of} has no size ${row.id}.`,
        'Add the size on the pattern’s own form.',
      ),
    ];
  if (sameContent(sizeOf(pattern, family, size, row), row)) return [];
  return [
    issue(
      `part ${row.id}`,
      'family',
      `Name, shape and bend order of ${row.id} come from its pattern ${of}.`,
      `Change them on ${of}, or remove ${row.id} from the family.`,
    ),
  ];
}

/** What the sizes of a saved pattern become; those it had before and lists no longer go, or stand alone with its end. */
function memberChanges(shop: Shop, before: Part | null, row: Part): Result<RowChange[]> {
  const family = patternIn(row);
  const had = patternIn(before)?.sizes ?? [];
  const issues: Issue[] = [];
  const changes: RowChange[] = [];
  for (const size of family?.sizes ?? []) {
    const current = byId(shop, size.partId);
    if (current && !(current.family?.is === 'size' && current.family.of === row.id)) {
      issues.push(taken(row, size.partId));
      continue;
    }
    const next = sizeOf(row, family as Pattern, size, current);
    if (!sameContent(current, next)) changes.push(change('part', current, next));
  }
  for (const { partId } of had) {
    const current = byId(shop, partId);
    if (!current || family?.sizes.some((size) => size.partId === partId)) continue;
    const lines = shop.line.filter((line) => line.partId === partId);
    if (family === null) changes.push(change('part', current, { ...current, family: null }));
    else if (lines[0]) issues.push(used(row, partId, lines[0].id));
    else changes.push(change('part', current, null));
  }
  return issues.length > 0 ? err(...issues) : ok(changes);
}

const taken = (row: Part, partId: string): Issue =>
  issue(
    `part ${row.id}`,
    'family',
    `The code ${partId} already belongs to another part.`,
    'Choose another code.',
  );

const used = (row: Part, partId: string, lineId: string): Issue =>
  issue(
    `part ${row.id}`,
    'family',
    `Size ${partId} is asked for by line ${lineId}, so it cannot go.`,
    'Keep the size, or change that line first.',
  );

/** The pattern without a size that is to be a part of its own, or to go. */
function leftFamily(shop: Shop, before: Part | null, row: Part): RowChange[] {
  if (before?.family?.is !== 'size' || row.family !== null) return [];
  const pattern = byId(shop, before.family.of);
  return pattern ? [change('part', pattern, withoutSize(pattern, before.id))] : [];
}
