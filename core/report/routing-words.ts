import { stepTitle } from '../part/stage.ts';
import type { Part } from '../part/part.ts';
import { operationsOf } from '../planning/operations.ts';
import { routingOf, stepAt } from '../planning/routing.ts';
import type { Shop } from '../shop/state.ts';
import { counted } from '../units/count.ts';
import { DAY, formatDuration } from '../units/duration.ts';

/**
 * The steps of a part in a row, with what is to be done; of a line those still open with what they take where they are done
 * fastest: "Shearing 12 min, then Bending 25 min, then Outside work 3 days (powder coat, white)".
 */
export function routingWords(shop: Shop, part: Part, lineId: string | null): string {
  const open = lineId === null ? [] : operationsOf(shop).operations.filter(({ line }) => line.id === lineId);
  return routingOf(part)
    .map((stage) => {
      const machines = open.find((operation) => operation.stage === stage)?.machines ?? [];
      const seconds = Math.min(...machines.map((able) => able.seconds));
      const takes = stage === 'outside' ? counted(seconds / DAY, 'day') : formatDuration(seconds);
      const note = stepAt(part, stage)?.note ?? '';
      return `${stepTitle[stage]}${machines.length > 0 ? ` ${takes}` : ''}${note === '' ? '' : ` (${note})`}`;
    })
    .join(', then ');
}
