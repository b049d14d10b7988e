import { issue, type Issue } from '../result.ts';
import type { RowOf, Shop } from '../shop/state.ts';

/** A tool fits brakes that are there, and has the figures of its kind. */
export function toolIssues(shop: Shop, tool: RowOf<'tool'>, subject: string): Issue[] {
  const need = (field: string, present: boolean, what: string, advice: string): Issue[] =>
    present ? [] : [issue(subject, field, `A ${tool.kind} needs ${what}.`, advice)];
  const figures =
    tool.kind === 'hemming'
      ? []
      : need('angleDeg', tool.angleDeg !== null, 'its angle', 'Give the angle between its flanks.');
  const opening =
    tool.kind === 'die'
      ? need('openingMm', tool.openingMm !== null, 'its V opening', 'Measure the V between its shoulders.')
      : [];
  return [...opening, ...figures, ...fits(shop, tool, subject)];
}

function fits(shop: Shop, { machineIds }: RowOf<'tool'>, subject: string): Issue[] {
  if (machineIds.length === 0)
    return [issue(subject, 'machineIds', 'It fits no brake.', 'Choose the brakes that it fits.')];
  const brakes = new Set(shop.machine.flatMap(({ id, stage }) => (stage === 'brake' ? [id] : [])));
  return machineIds
    .filter((id) => !brakes.has(id))
    .map((id) => issue(subject, 'machineIds', `${id} is no brake of the shop.`, 'Choose another brake.'));
}
