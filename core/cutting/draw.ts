import { planAxis } from './axis.ts';
import type { Group } from './groups.ts';
import type { Offcut, PlacedBlank, SheetGroup } from './plan.ts';
import { hundredth, type BlankSize, type RunInput } from './run.ts';
import type { Panel } from './layout.ts';
import { isLargeEnough } from './remnants.ts';
import { across } from './steps.ts';

interface Sheet {
  readonly run: RunInput;
  readonly sizes: readonly BlankSize[];
  readonly group: Group;
  readonly blanks: PlacedBlank[];
  readonly offcuts: Offcut[];
}

/** A group with every blank and offcut placed: panels along x, strips across y, each cut in the order of the list. */
export function drawGroup(run: RunInput, sizes: readonly BlankSize[], group: Group): SheetGroup {
  const { id, stock, count, widthMm, lengthMm, costCents } = group;
  const sheet: Sheet = { run, sizes, group, blanks: [], offcuts: [] };
  const lengths = group.layout.panels.map((panel) => panel.lengthMm);
  const spans = spansOf(sheet, lengthMm, stock.endTrimMm, lengths);
  const { trimFirstMm } = group;
  if (trimFirstMm > 0)
    addOffcut(sheet, stock.sideTrimMm > 0 ? 'trim' : 'offcut', { x: 0, y: 0, w: lengthMm, h: trimFirstMm });
  const h = across(group).totalMm;
  for (const { at, size, kind } of spans.rest) addOffcut(sheet, kind, { x: at, y: trimFirstMm, w: size, h });
  group.layout.panels.forEach((panel, k) => drawPanel(sheet, panel, spans.pieces[k] as number));
  const remnantStock = stock.kind === 'sheet' && stock.remnant;
  return {
    id,
    stockId: stock.id,
    remnantStock,
    count,
    widthMm,
    lengthMm,
    costCents,
    blanks: sheet.blanks,
    offcuts: sheet.offcuts,
  };
}

function drawPanel(sheet: Sheet, panel: Panel, x: number): void {
  const { group, sizes } = sheet;
  const girths = panel.strips.map((strip) => strip.girthMm);
  const { totalMm, trimMm } = across(group);
  const spans = spansOf(sheet, totalMm, trimMm, girths);
  const placed = (at: number): number => hundredth(group.trimFirstMm + at);
  for (const { at, size, kind } of spans.rest)
    addOffcut(sheet, kind, { x, y: placed(at), w: panel.lengthMm, h: size });
  panel.strips.forEach((strip, k) => {
    const y = placed(spans.pieces[k] as number);
    const lengths = strip.blanks.map((item) => (sizes[item] as BlankSize).lengthMm);
    const along = spansOf(sheet, panel.lengthMm, 0, lengths);
    strip.blanks.forEach((item, n) => {
      const lines = (sizes[item] as BlankSize).lines.map((line) => line.id);
      const start = hundredth(x + (along.pieces[n] as number));
      sheet.blanks.push({ x: start, y, w: lengths[n] as number, h: strip.girthMm, lines });
    });
    for (const { at, size, kind } of along.rest)
      addOffcut(sheet, kind, { x: hundredth(x + at), y, w: size, h: strip.girthMm });
  });
}

/** Start of each piece along one axis, then the trim before them and the offcuts after them. */
function spansOf({ run }: Sheet, totalMm: number, trimMm: number, piecesMm: readonly number[]) {
  const plan = planAxis(totalMm, trimMm, piecesMm, run.shear);
  const rest: { at: number; size: number; kind: 'trim' | 'offcut' }[] = [];
  let at = 0;
  const step = (size: number): number => {
    const from = at;
    at = hundredth(at + size);
    return from;
  };
  if (trimMm > 0) rest.push({ at: step(trimMm), size: trimMm, kind: 'trim' });
  const pieces = piecesMm.map(step);
  for (const cut of plan.cuts)
    if (cut.gives === 'offcut') rest.push({ at: step(cut.sizeMm), size: cut.sizeMm, kind: 'offcut' });
  if (plan.remains === 'offcut' && plan.remainsMm > 0)
    rest.push({ at, size: plan.remainsMm, kind: 'offcut' });
  return { pieces, rest };
}

function addOffcut(
  { run, offcuts }: Sheet,
  kind: 'trim' | 'offcut',
  rect: { x: number; y: number; w: number; h: number },
): void {
  offcuts.push({
    ...rect,
    kind: kind === 'trim' ? 'trim' : isLargeEnough(run.keep, rect.h, rect.w) ? 'remnant' : 'scrap',
  });
}
