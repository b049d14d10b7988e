import { blanksOf } from '../planning/blanks.ts';
import { piecesCovered, piecesTaken } from '../planning/cut-lists.ts';
import { stepDone, STAGES, type Stage } from '../part/stage.ts';
import { stagesLeft } from '../planning/stages-left.ts';
import { LAST_LINE_NUMBER, nextLineNumber } from '../shop/line-number.ts';
import { operationIdOf, type OrderLine, type WorkOrder } from '../shop/order.ts';
import { err, issue, ok, type Issue, type Result } from '../result.ts';
import { change, sameContent, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { hasStarted } from './line-issues.ts';

/** What saving a line does. */
interface LineChange {
  readonly changes: readonly RowChange[];
  /** What becomes of what was cut already, a sentence without its stop; '': nothing was. */
  readonly note: string;
}

/**
 * A line as it is saved over the one that stands. Before work on it has started it may become anything. Later, metal, part
 * and length stay as they were cut. More pieces than a finished step made are a line of their own, so that they are
 * sheared and bent too; fewer leave blanks over, which is said.
 * @param order as it will be
 * @param claimed line numbers that new lines of the same step take
 */
export function changeLine(
  shop: Shop,
  before: OrderLine,
  line: OrderLine,
  order: Pick<WorkOrder, 'status'>,
  claimed: Set<number>,
): Result<LineChange> {
  if (sameContent(before, line)) return ok({ changes: [], note: '' });
  const issued = piecesTaken(shop, line.id);
  if (!hasStarted(shop, line.id) && issued === 0)
    return ok({ changes: [change('line', before, line)], note: '' });
  const issues = [...cutOtherwise(before, line, issued), ...nothingLeft(shop, before, line)];
  if (issues.length > 0) return err(...issues);
  const ended = shop.record.some((r) => r.id.startsWith(`${line.id}:`) && r.end !== null);
  if (line.quantity > before.quantity && ended && line.status !== 'cancelled')
    return morePieces(shop, before, line, order, claimed);
  return ok({ changes: [change('line', before, line)], note: leftOver(shop, line, issued) });
}

const CUT = {
  partId: 'part',
  materialId: 'material',
  gauge: 'gauge',
  colourId: 'colour',
  lengthMm: 'length',
} as const;

/** Blanks of another metal, part or length are other blanks. */
function cutOtherwise(before: OrderLine, line: OrderLine, issued: number): Issue[] {
  const fields = (Object.keys(CUT) as (keyof typeof CUT)[]).filter((key) => before[key] !== line[key]);
  const what = issued > 0 ? `The sheets for ${issued} of its blanks were issued` : 'Work on it has started';
  return fields.map((key) =>
    issue(
      `line ${line.id}`,
      CUT[key],
      `The ${CUT[key]} of line ${line.id} cannot change any more. ${what}.`,
      'Cancel this line, so that what was cut stays on record, and add a new one.',
    ),
  );
}

/** A finished line that is opened again would wait for ever: every step of it is done. */
function nothingLeft(shop: Shop, before: OrderLine, line: OrderLine): Issue[] {
  if (before.status === 'open' || line.status !== 'open' || line.quantity > before.quantity) return [];
  if (stagesLeft(shop, line)?.length !== 0) return [];
  return [
    issue(
      `line ${line.id}`,
      'status',
      `Every step of line ${line.id} is done; opened, it would wait for nothing.`,
      'Add a line for pieces that are wanted besides.',
    ),
  ];
}

/** What was finished stays as it was made; the rest is a new line of the same metal, part and length. */
function morePieces(
  shop: Shop,
  before: OrderLine,
  line: OrderLine,
  order: Pick<WorkOrder, 'status'>,
  claimed: Set<number>,
): Result<LineChange> {
  const more = line.quantity - before.quantity;
  const number = nextLineNumber(shop, line.orderId, claimed);
  const subject = `line ${line.id}`;
  const made = `Line ${line.id} is made for ${before.quantity} pieces already, in part at least`;
  if (order.status === 'done' || order.status === 'cancelled')
    return err(
      issue(
        subject,
        'quantity',
        `${made}, and its work order is ${order.status}.`,
        'Open the work order first.',
      ),
    );
  if (number > LAST_LINE_NUMBER)
    return err(
      issue(
        subject,
        'quantity',
        `${made}, and work order ${line.orderId} has no line number left for ${more} more.`,
        'Put them on another work order.',
      ),
    );
  claimed.add(number);
  const kept = { ...line, quantity: before.quantity, status: before.status };
  const added: OrderLine = {
    ...line,
    id: `${line.orderId}/${number}`,
    number,
    quantity: more,
    overrun: 0,
    status: 'open',
    makeUpFor: null,
  };
  return ok({
    changes: [
      ...(sameContent(before, kept) ? [] : [change('line', before, kept)]),
      change('line', null, added),
    ],
    note: `${before.quantity} of line ${line.id} were cut already, so its ${more} more are line ${added.id}`,
  });
}

/** Blanks that nobody asks for any more. */
function leftOver(shop: Shop, line: OrderLine, issued: number): string {
  if (line.status === 'cancelled') return '';
  const made = (stage: Stage): number =>
    shop.record.find((r) => r.id === operationIdOf(line.id, stage))?.good ?? 0;
  const last = STAGES.findLast((stage) => stage !== 'shear' && made(stage) > line.quantity);
  if (last)
    return `${made(last)} of line ${line.id} are ${stepDone[last]} already, ${made(last) - line.quantity} too many`;
  const sheared = piecesCovered(shop, line.id, made('shear'));
  const blanks = blanksOf(shop, line);
  if (sheared <= blanks) return '';
  const what = issued > 0 ? 'cut or on issued sheets' : 'cut';
  return `${sheared} blanks of line ${line.id} are ${what} already, ${sheared - blanks} are left over`;
}
