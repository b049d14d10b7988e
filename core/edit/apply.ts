import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { applyFloorCommand } from './apply-floor.ts';
import type { Command } from './command.ts';
import { importRecords } from './record-commands.ts';
import { acceptStandards, revertStandard } from './standards-commands.ts';
import { removeLine, removeOrder, saveLine, saveOrder } from './order-commands.ts';
import { splitLine } from './line-split.ts';
import { importOrders } from './order-import.ts';
import { importRows, importStock } from './rows-import.ts';
import { moveOperations } from './move-commands.ts';
import { pinOperations, replacePlan, unpinOperations } from './plan-commands.ts';
import { goBackTo, publishPlan } from './publish-commands.ts';
import { removeRow, saveRow, saveRows, saveSettings } from './row-commands.ts';
import { forgetMemory } from './file-memory.ts';
import { forgetList, keepList } from './kept-lists.ts';
import { removeCutList, saveCutList, takeWalkIn } from './cutting-commands.ts';
import { moveStock } from './stock-commands.ts';
import { takeSheets } from './take-sheets.ts';
import { oneEach, type Edit } from '../shop/row-change.ts';

/**
 * Turn a command of the planner or the floor into row changes, or refuse it with sentences. Pure: nothing is stored here.
 * @param shop the shop as it is; not changed
 * @returns the edit (perhaps without changes when all stands so already), or issues naming thing, field and limit
 */
export function applyCommand(shop: Shop, command: Command): Result<Edit> {
  const edit = carryOut(shop, command);
  return edit.ok ? ok({ ...edit.value, changes: oneEach(edit.value.changes) }) : edit;
}

function carryOut(shop: Shop, command: Command): Result<Edit> {
  switch (command.do) {
    case 'operation.move':
      return moveOperations(shop, command);
    case 'operation.pin':
      return pinOperations(shop, command);
    case 'operation.unpin':
      return unpinOperations(shop, command);
    case 'plan.replace':
      return replacePlan(shop, command);
    case 'plan.publish':
      return publishPlan(shop, command);
    case 'plan.goBack':
      return goBackTo(shop, command);
    case 'order.save':
    case 'order.remove':
    case 'line.save':
    case 'line.remove':
    case 'line.split':
      return changeOrder(shop, command);
    case 'orders.import':
      return importOrders(shop, command);
    case 'rows.import':
      return importRows(shop, command);
    case 'floor.changeover':
    case 'floor.start':
    case 'floor.pause':
    case 'floor.suspend':
    case 'floor.resume':
    case 'floor.count':
    case 'floor.cut':
    case 'floor.done':
    case 'floor.correct':
      return applyFloorCommand(shop, command);
    case 'records.import':
      return importRecords(shop, command);
    case 'standards.accept':
      return acceptStandards(shop, command);
    case 'standards.revert':
      return revertStandard(shop, command.learnedId, command.at);
    case 'stock.receive':
    case 'stock.count':
    case 'stock.correct':
      return moveStock(shop, command);
    case 'stock.import':
      return importStock(shop, command);
    case 'stock.use':
      return takeSheets(shop, command);
    case 'cutting.save':
      return saveCutList(shop, command.list, command.label);
    case 'cutting.remove':
      return removeCutList(shop, command.id);
    case 'walkin.take':
      return takeWalkIn(shop, command);
    default:
      return saveOrRemove(shop, command);
  }
}

type OrderCommand = Extract<
  Command,
  { do: 'order.save' | 'order.remove' | 'line.save' | 'line.remove' | 'line.split' }
>;

function changeOrder(shop: Shop, command: OrderCommand): Result<Edit> {
  switch (command.do) {
    case 'order.save':
      return saveOrder(shop, command);
    case 'order.remove':
      return removeOrder(shop, command);
    case 'line.save':
      return saveLine(shop, command.line);
    case 'line.remove':
      return removeLine(shop, command);
    case 'line.split':
      return splitLine(shop, command);
  }
}

type RowCommand = Extract<
  Command,
  {
    do:
      | 'settings.save'
      | 'row.save'
      | 'rows.save'
      | 'row.remove'
      | 'cutting.keep'
      | 'cutting.forget'
      | 'memory.forget';
  }
>;

function saveOrRemove(shop: Shop, command: RowCommand): Result<Edit> {
  switch (command.do) {
    case 'settings.save':
      return saveSettings(shop, command.row);
    case 'row.save':
      return saveRow(shop, command.kind, command.row);
    case 'rows.save':
      return saveRows(shop, command.rows, command.label);
    case 'row.remove':
      return removeRow(shop, command);
    case 'cutting.keep':
      return keepList(shop, command.list);
    case 'cutting.forget':
      return forgetList(shop, command.list);
    case 'memory.forget':
      return forgetMemory(shop, command);
  }
}
