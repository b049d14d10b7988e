import { LAST_LINE_NUMBER, nextLineNumber } from '../shop/line-number.ts';
import { startsBeforeDue, type OrderLine, type WorkOrder } from '../shop/order.ts';
import { termsOf } from '../shop/line-terms.ts';
import { issue, type Issue } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { otherCase } from './same-code.ts';

export const hasStarted = (shop: Shop, lineId: string): boolean =>
  shop.record.some((r) => r.id.startsWith(`${lineId}:`));

/** What speaks against an order beside others as it is typed, whatever its lines are. */
export function orderIssues(others: readonly WorkOrder[], order: WorkOrder): Issue[] {
  const subject = `work order ${order.id}`;
  const other = otherCase(others, order.id);
  return [
    ...(other === null ? [] : [issue(subject, 'number', other.message, other.advice)]),
    ...(startsBeforeDue(order)
      ? []
      : [
          issue(
            subject,
            'release',
            'The time in “Not before” is not before the due date.',
            'Set an earlier “Not before” or a later due date.',
          ),
        ]),
  ];
}

/**
 * Open lines that would have to start after they are due, by what their order and they themselves say. An order whose own
 * dates clash is `orderIssues`' affair.
 */
export const startIssues = (order: WorkOrder, lines: readonly OrderLine[]): Issue[] =>
  lines.flatMap((line) =>
    line.status !== 'open' || !startsBeforeDue(order) || startsBeforeDue(termsOf(order, line))
      ? []
      : [
          issue(
            `line ${line.id}`,
            'release',
            `Line ${line.id}: the time in “Not before”, its own or its order’s, is not before the due date.`,
            'Set an earlier “Not before” or a later due date.',
          ),
        ],
  );

/** What a line names must be there: part, material with that gauge, colour. */
export function lineIssues(shop: Shop, orderId: string, line: OrderLine): Issue[] {
  const subject = `line ${line.id}`;
  const issues: Issue[] = [];
  const refuse = (field: string, message: string, advice: string): void => {
    issues.push(issue(subject, field, message, advice));
  };
  if (line.orderId !== orderId || line.id !== `${orderId}/${line.number}`)
    refuse(
      'line',
      `${line.id} is not a line of work order ${orderId}.`,
      `Name it ${orderId}/${line.number}.`,
    );
  if (!shop.part.some((p) => p.id === line.partId))
    refuse('part', `There is no part ${line.partId}.`, 'Add the part in Shop, Parts, or choose another.');
  if (!shop.colour.some((c) => c.id === line.colourId))
    refuse(
      'colour',
      `There is no colour ${line.colourId}.`,
      'Add the colour in Shop, Colours, or choose another.',
    );
  const material = shop.material.find((m) => m.id === line.materialId);
  if (!material)
    refuse(
      'material',
      `There is no material ${line.materialId}.`,
      'Add it in Shop, Materials, or choose another.',
    );
  else if (!material.gauges.some((g) => g.label === line.gauge))
    refuse(
      'gauge',
      `${material.name} has no gauge ${line.gauge}.`,
      `It has ${material.gauges.map((g) => g.label).join(', ')}.`,
    );
  return issues;
}

/** A new line with the number of one whose work is on record would count as made. */
export function usedNumber(shop: Shop, { id, orderId }: OrderLine, claimed: Iterable<number> = []): Issue[] {
  if (!hasStarted(shop, id)) return [];
  const next = nextLineNumber(shop, orderId, claimed);
  const advice =
    next > LAST_LINE_NUMBER ? 'Put it on another work order.' : `Give it number ${next}, the next free one.`;
  return [issue(`line ${id}`, 'line', `Work on a line ${id} is on record already.`, advice)];
}
