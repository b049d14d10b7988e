import type { Tool } from '../../../../core/part/tool.ts';
import type { Shop } from '../../../../core/shop/state.ts';

/** What a kind of tool has; its figures are still to be measured. */
export const figuresOf = (
  kind: Tool['kind'],
): Pick<Tool, 'kind' | 'openingMm' | 'angleDeg' | 'radiusMm' | 'gooseneck'> => ({
  kind,
  openingMm: kind === 'die' ? NaN : null,
  angleDeg: kind === 'hemming' ? null : NaN,
  radiusMm: null,
  gooseneck: false,
});

/** A new die; it fits the brake where there is only one. */
export function freshTool(shop: Shop): Tool {
  const brakes = shop.machine.filter(({ stage }) => stage === 'brake');
  return {
    id: '',
    name: '',
    ...figuresOf('die'),
    lengthMm: NaN,
    ratingKnPerM: null,
    machineIds: brakes.length === 1 ? [brakes[0]!.id] : [],
    note: '',
    revision: 0,
  };
}
