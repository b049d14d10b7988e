import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { orderLine, workOrder, type OrderLine } from '../../../core/shop/order.ts';
import { err, ok, issue, sentence, type Result } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatClock, formatDayYearAndClock, toInstant, wallParts } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { readWhole } from '../../../core/units/number.ts';
import { fieldErrors } from '../../form/field-errors.ts';
import type { Editable } from './line-columns.tsx';
import type { LineRow } from './line-rows.ts';

/** What a cell is called when it is typed in. */
export const cellName = ({ line }: Pick<LineRow, 'line'>, what: Editable): string =>
  what === 'due'
    ? `Due date of the ${line.due === null ? 'work order' : 'line'}`
    : { quantity: 'Pieces', status: 'Status' }[what];

/** What stands in a cell when it is opened for typing: a due date as a browser's field has it, "2026-12-04T14:00". */
export function cellText({ line, terms }: LineRow, what: Editable, timeZone: string): string {
  if (what === 'quantity') return String(line.quantity);
  if (what === 'status') return line.status;
  return `${wallParts(instant(terms.due), timeZone).date}T${formatClock(instant(terms.due), timeZone)}`;
}

/**
 * The command for a cell's new text, checked by the form's schemas and by the shop's rules.
 * A due date is the order's, and changes for all its lines that have none of their own.
 * @returns null when nothing changes; or a refusal in a sentence
 */
export function changeCell(
  shop: Shop,
  row: LineRow,
  what: Editable,
  text: string,
  at: Instant,
): Result<Command | null> {
  const { timeZone } = shop.settings;
  if (text.trim() === cellText(row, what, timeZone)) return ok(null);
  const command = what === 'due' ? dueCommand(shop, row, text, at) : lineCommand(shop, row, what, text);
  if (!command.ok) return command;
  const edit = applyCommand(shop, command.value);
  return edit.ok ? command : err(issue(`line ${row.id}`, what, sentence(edit.issues), ''));
}

function lineCommand(shop: Shop, row: LineRow, what: 'quantity' | 'status', text: string): Result<Command> {
  const pieces = readWhole(text, shop.settings, 'quantity');
  if (what === 'quantity' && !pieces.ok) return pieces;
  const patch =
    pieces.ok && what === 'quantity' ? { quantity: pieces.value } : { status: text as OrderLine['status'] };
  return patched(row, what, patch);
}

function patched(row: LineRow, what: Editable, patch: Partial<OrderLine>): Result<Command> {
  const line: OrderLine = { ...row.line, ...patch };
  const refused = Object.values(fieldErrors(orderLine, line))[0];
  return refused === undefined
    ? ok({ do: 'line.save', line })
    : err(issue(`line ${row.id}`, what, `${cellName(row, what)}: ${refused}`, ''));
}

function dueCommand(shop: Shop, row: LineRow, text: string, at: Instant): Result<Command> {
  const { order, line } = row;
  const [date = '', clock = ''] = text.split('T');
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || !/^\d{2}:\d{2}$/.test(clock))
    return err(issue(`work order ${order.id}`, 'due', 'A due date needs a day and a time.', ''));
  const due = toInstant(date, clock, shop.settings.timeZone);
  if (due < at)
    return err(
      issue(
        `line ${line.id}`,
        'due',
        `${formatDayYearAndClock(due, shop.settings.timeZone)} is past.`,
        'Type one that is still to come; if it is meant so, open the work order and save it there.',
      ),
    );
  if (line.due !== null) return patched(row, 'due', { due });
  const changed = { ...order, due };
  const refused = Object.values(fieldErrors(workOrder, changed))[0];
  if (refused !== undefined) return err(issue(`work order ${order.id}`, 'due', refused, ''));
  return ok({ do: 'order.save', order: changed, lines: [], removed: [], at });
}
