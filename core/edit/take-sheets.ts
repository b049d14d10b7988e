import { replaySteps, type ShearAtWork } from '../cutting/replay.ts';
import { blanksOf } from '../planning/blanks.ts';
import { piecesCovered, piecesIn, piecesTaken } from '../planning/cut-lists.ts';
import { REMNANT_WORTH } from '../cutting/remnants.ts';
import { remnantRuleOf, shearOf, stockUsed } from '../planning/cut-run.ts';
import { lotKey, lotOf, lotWords, sameLot } from '../material/lot.ts';
import type { Sheet } from '../material/material.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import { operationIdOf } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import type { CutList } from '../shop/stock.ts';
import type { Command } from './command.ts';
import { change, withChanges, type RowChange, type Edit } from '../shop/row-change.ts';
import { entry, moved, noStock, type Happening } from './stock-commands.ts';

/**
 * The sheets of a run are taken from stock, as one step. What is used and what is kept is read off the list by cutting it
 * on simulated sheets. The list stays as it was taken, so that nothing is reserved or taken twice.
 * @returns the edit; or why not: taken already, a list that the shear cannot cut, not enough on hand
 */
export function takeSheets(
  shop: Shop,
  { list, machineId, at }: Extract<Command, { do: 'stock.use' }>,
): Result<Edit> {
  const machine = shop.machine.find((m) => m.id === machineId && m.stage === 'shear');
  if (!machine)
    return err(issue(`run ${list.id}`, 'machine', `There is no shear ${machineId}.`, 'Open the run again.'));
  const shear: ShearAtWork = { shear: shearOf(machine), units: shop.settings };
  const wrong = [...takenBefore(shop, list), ...uncut(list, shear), ...lotsMixed(shop, list)];
  if (wrong.length > 0) return err(...wrong);
  const note = `for run ${list.id}`;
  const used = useSheets(shop, list, { at, note, what: 'used' });
  if (!used.ok) return used;
  const kept = keepRemnants(withChanges(shop, used.value), list, shear, { at, note, what: 'kept' });
  const changed = shop.cutList.find((one) => one.id === list.id) ?? null;
  return ok({
    label: `Issue the sheets of run ${list.id} from stock`,
    changes: [
      ...used.value,
      ...kept,
      ...(changed ? [change('cutList', changed, null)] : []),
      change('cutList', null, {
        ...list,
        id: `${list.id} ${at}`,
        taken: at,
        counted: countedOf(shop, list.lines),
      }),
    ],
  });
}

/** What the floor has counted of lines by now. */
const countedOf = (shop: Shop, lines: readonly string[]): CutList['counted'] =>
  lines.flatMap((line) => {
    const pieces = countedBlanks(shop, line);
    return pieces === 0 ? [] : [{ line, pieces }];
  });

function countedBlanks(shop: Shop, line: string): number {
  const record = shop.record.find((r) => r.id === operationIdOf(line, 'shear'));
  return record ? record.good + record.scrapped : 0;
}

/** Lines whose blanks are there already, or that are gone. */
function takenBefore(shop: Shop, list: CutList): Issue[] {
  return list.lines.flatMap((id): Issue[] => {
    const pieces = piecesIn(list, id);
    const line = shop.line.find((one) => one.id === id);
    const before = piecesTaken(shop, id);
    const covered = piecesCovered(shop, id, countedBlanks(shop, id));
    if (pieces === 0 || (line && (before === 0 || covered + pieces <= blanksOf(shop, line) + line.overrun)))
      return [];
    const message = line
      ? `The sheets for ${before} of the ${blanksOf(shop, line)} blanks of line ${id} were issued before.`
      : `There is no line ${id} any more.`;
    return [issue(`line ${id}`, 'lines', message, 'Nothing was issued; look at the run again.')];
  });
}

/** Steps that the shear cannot do, and pieces that no step brings to an end: what is kept would not be known. */
function uncut({ id, groups, steps }: CutList, shear: ShearAtWork): Issue[] {
  const { pieces, refusals } = replaySteps(steps, groups, shear);
  const left = pieces.filter(({ place }) => !['blank', 'remnant', 'scrap'].includes(place));
  const messages = [
    ...(steps.length === 0 ? [`The list of run ${id} has no steps.`] : []),
    ...refusals.map(({ message }) => message),
    ...left.map(({ count, place }) => `${count} pieces are left on stack ${place}.`),
  ];
  return messages.map((message) =>
    issue(`run ${id}`, 'steps', message, 'Fix the list, or plan the steps again, then issue the sheets.'),
  );
}

/** Sheets of several lots for a line that is not to mix them, those that were issued for it before included. */
function lotsMixed(shop: Shop, list: CutList): Issue[] {
  const { stockKnows: knows } = shop.settings;
  if (knows === null) return [];
  return list.lines.flatMap((id): Issue[] => {
    const line = shop.line.find((one) => one.id === id);
    if (!line || line.mixLots || piecesIn(list, id) === 0) return [];
    const before = shop.cutList.filter((one) => one.taken !== null && piecesIn(one, id) > 0);
    const lots = new Map(
      [...before, list].flatMap(({ groups }) =>
        groups.flatMap(({ stockId }) => {
          const sheet = shop.sheet.find((one) => one.id === stockId);
          return sheet ? [[lotKey(lotOf(knows, sheet)), lotWords(lotOf(knows, sheet))] as const] : [];
        }),
      ),
    );
    if (lots.size < 2) return [];
    const named = [...lots.values()].map((words) => words || 'no lot on record').join('; ');
    const message = `Line ${id} would be cut from several lots: ${named}.`;
    return [
      issue(
        `line ${id}`,
        'lot',
        message,
        'Nothing was issued; plan the steps again, or let the line mix lots.',
      ),
    ];
  });
}

function useSheets(shop: Shop, { groups }: CutList, happening: Happening): Result<RowChange[]> {
  const changes: RowChange[] = [];
  for (const { sheetId, pieces } of stockUsed(shop, groups)) {
    const sheet = shop.sheet.find((s) => s.id === sheetId);
    if (!sheet) return noStock(sheetId);
    const edit = moved(sheet, -pieces, happening, '');
    if (!edit.ok) return edit;
    changes.push(...edit.value.changes);
  }
  return ok(changes);
}

interface Kept {
  readonly from: Sheet;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly count: number;
}

/** The remnants that the list cuts, sheet group by sheet group, those of one size from one stock as one entry. */
function keepRemnants(shop: Shop, list: CutList, shear: ShearAtWork, happening: Happening): RowChange[] {
  const kept = new Map<string, Kept>();
  for (const group of list.groups) {
    const from = shop.sheet.find((s) => s.id === group.stockId);
    for (const { place, widthMm, lengthMm, count } of replaySteps(list.steps, [group], shear).pieces) {
      if (!from || place !== 'remnant') continue;
      const key = `${from.id} ${widthMm} ${lengthMm}`;
      kept.set(key, { from, widthMm, lengthMm, count: count + (kept.get(key)?.count ?? 0) });
    }
  }
  const changes: RowChange[] = [];
  for (const one of kept.values()) changes.push(...keep(withChanges(shop, changes), one, happening));
  return changes;
}

/** A remnant keeps its lot and joins those of its metal, lot and size; a new size becomes stock of its own. What is more than the shop keeps is scrap. */
function keep(shop: Shop, { from, widthMm, lengthMm, count }: Kept, happening: Happening): RowChange[] {
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.05;
  const before =
    shop.sheet.find(
      (s) =>
        s.form === 'remnant' &&
        s.trimMm === 0 &&
        s.materialId === from.materialId &&
        s.gauge === from.gauge &&
        s.colourId === from.colourId &&
        sameLot(s, from) &&
        near(s.widthMm, widthMm) &&
        near(s.lengthMm, lengthMm),
    ) ?? null;
  const kept = Math.min(count, Math.max(0, remnantRuleOf(shop).most - (before?.onHand ?? 0)));
  if (kept === 0) return [];
  const share = (widthMm * lengthMm) / (from.widthMm * from.lengthMm);
  const worth = from.form === 'remnant' ? 1 : REMNANT_WORTH;
  const row: Sheet = before ?? {
    ...from,
    id: remnantCode(shop, from, widthMm, lengthMm),
    form: 'remnant',
    widthMm,
    lengthMm,
    trimMm: 0,
    costCents: Math.round(from.costCents * share * worth),
    onHand: 0,
    revision: 0,
  };
  return entry(before, { ...row, onHand: row.onHand + kept }, kept, happening);
}

/** The stock it was cut from and its size in whole millimetres, "galv-24-moss-r300x3048"; numbered where that is taken. */
function remnantCode(shop: Shop, from: Sheet, widthMm: number, lengthMm: number): string {
  const size = `-r${Math.round(widthMm)}x${Math.round(lengthMm)}`;
  const stem = from.id.replace(/-r\d+x\d+(-\d+)?$/, '');
  for (let n = 1; ; n++) {
    const end = n === 1 ? size : `${size}-${n}`;
    const code = `${stem.slice(0, 40 - end.length)}${end}`;
    if (!shop.sheet.some((s) => s.id === code)) return code;
  }
}
