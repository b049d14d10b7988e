import { gaugeName } from '../report/dispatch.ts';
import type { Sheet } from '../shop/material.ts';
import { bad, good, problem, type Result } from '../shop/result.ts';
import type { Shop } from '../shop/state.ts';
import type { Movement } from '../shop/stock.ts';
import { formatLength } from '../units/length.ts';
import type { Edit } from './apply.ts';
import type { Command } from './command.ts';
import { change, type RowChange } from './row-change.ts';

type StockCommand = Extract<Command, { do: 'stock.receive' | 'stock.count' | 'stock.correct' }>;
type UseCommand = Extract<Command, { do: 'stock.use' }>;
type Happening = Pick<Movement, 'at' | 'what' | 'note'>;

const MOST = 1_000_000;

/** "24 ga moss, 48 in × 120 in": stock as people say it. */
export function stockName(shop: Shop, sheet: Sheet): string {
  const { units } = shop.settings;
  const colour = shop.colour.find((c) => c.id === sheet.colourId)?.name ?? sheet.colourId;
  const size = `${formatLength(sheet.widthMm, units)} × ${formatLength(sheet.lengthMm, units)}`;
  return `${gaugeName(sheet.gauge)} ${colour}, ${size}`;
}

/**
 * Stock that came, was counted, or is corrected by hand: one entry in its history.
 * @returns the edit; or why not: no such stock, or fewer than none left
 */
export function moveStock(shop: Shop, command: StockCommand): Result<Edit> {
  const sheet = shop.sheet.find((s) => s.id === command.sheetId);
  if (!sheet) return noStock(command.sheetId);
  const name = stockName(shop, sheet);
  const { at, note } = command;
  switch (command.do) {
    case 'stock.receive':
      return moved(
        sheet,
        command.pieces,
        { at, note, what: 'received' },
        `Receive ${command.pieces} of ${name}`,
      );
    case 'stock.count': {
      const by = command.pieces - sheet.onHand;
      return moved(sheet, by, { at, note, what: 'counted' }, `Count ${command.pieces} of ${name}`);
    }
    case 'stock.correct':
      return moved(
        sheet,
        command.by,
        { at, note, what: 'corrected' },
        `Correct ${name} by ${command.by > 0 ? '+' : ''}${command.by}`,
      );
  }
}

/**
 * A run was cut: its sheets leave the stock, its remnants worth keeping become stock of their own. The changed step list
 * that stood for it goes.
 */
export function useStock(shop: Shop, command: UseCommand): Result<Edit> {
  const changes: RowChange[] = [];
  const note = `for ${command.lines.slice(0, 3).join(', ')}${command.lines.length > 3 ? ' …' : ''}`;
  for (const { sheetId, pieces } of command.used) {
    const sheet = shop.sheet.find((s) => s.id === sheetId);
    if (!sheet) return noStock(sheetId);
    const edit = moved(sheet, -pieces, { at: command.at, note, what: 'used' }, '');
    if (!edit.ok) return edit;
    changes.push(...edit.value.changes);
  }
  for (const kept of alike(command.kept)) {
    const from = shop.sheet.find((s) => s.id === kept.fromSheetId);
    if (!from) return noStock(kept.fromSheetId);
    changes.push(...keepRemnant(shop, from, kept, { at: command.at, note, what: 'kept' }));
  }
  const list = shop.cutList.find((c) => c.lines.some((line) => command.lines.includes(line)));
  if (list) changes.push(change('cutList', list, null));
  return good({ label: `Take the sheets of ${note.slice(4)} from stock`, changes });
}

/** Share of its metal's price that a remnant is worth: low, so that it is cut first. Common practice, no source. */
const REMNANT_WORTH = 0.25;

type Kept = UseCommand['kept'][number];

/** Remnants of one size from one stock put together: they become one entry. */
function alike(kept: readonly Kept[]): Kept[] {
  const bySize = new Map<string, Kept>();
  for (const one of kept) {
    const key = `${one.fromSheetId} ${one.widthMm} ${one.lengthMm}`;
    bySize.set(key, { ...one, pieces: one.pieces + (bySize.get(key)?.pieces ?? 0) });
  }
  return [...bySize.values()];
}

/** A remnant's code names the stock it was cut from and its size, in whole millimetres. */
function keepRemnant(shop: Shop, from: Sheet, kept: Kept, happening: Happening): RowChange[] {
  const { widthMm, lengthMm, pieces } = kept;
  const size = `-r${Math.round(widthMm)}x${Math.round(lengthMm)}`;
  const id = `${from.id.replace(/-r\d+x\d+$/, '').slice(0, 40 - size.length)}${size}`;
  const before = shop.sheet.find((s) => s.id === id) ?? null;
  const share = (widthMm * lengthMm) / (from.widthMm * from.lengthMm);
  const worth = from.form === 'remnant' ? 1 : REMNANT_WORTH;
  const row: Sheet = before ?? {
    ...from,
    id,
    form: 'remnant',
    widthMm,
    lengthMm,
    trimMm: 0,
    costCents: Math.round(from.costCents * share * worth),
    onHand: 0,
    revision: 0,
  };
  return entry(before, { ...row, onHand: row.onHand + pieces }, pieces, happening);
}

function moved(sheet: Sheet, by: number, happening: Happening, label: string): Result<Edit> {
  const after = sheet.onHand + by;
  if (after >= 0 && after <= MOST) {
    const changes =
      by === 0 && happening.what !== 'counted'
        ? []
        : entry(sheet, { ...sheet, onHand: after }, by, happening);
    return good({ label, changes });
  }
  return bad(
    problem(
      `stock ${sheet.id}`,
      'pieces',
      `Stock ${sheet.id} has ${sheet.onHand} on hand; ${after} cannot be.`,
      after < 0
        ? 'Count it, or receive what is missing, first.'
        : `At most ${MOST.toLocaleString('en')} can be kept.`,
    ),
  );
}

function entry(before: Sheet | null, after: Sheet, pieces: number, happening: Happening): RowChange[] {
  const saved = change('sheet', before, after);
  const id = `${after.id}.${saved.after?.revision ?? 0}`;
  const row: Movement = { id, sheetId: after.id, pieces, after: after.onHand, revision: 0, ...happening };
  return [saved, change('movement', null, row)];
}

const noStock = (id: string): Result<never> =>
  bad(problem(`stock ${id}`, 'stock', `There is no stock ${id}.`, 'It may have been removed already.'));
