import type { Command, FormRow } from '../edit/command.ts';
import { countCuts } from '../estimate/shear.ts';
import { usualMachine } from '../estimate/usual-machine.ts';
import {
  newSheet,
  sizeName,
  usualSheet,
  USUAL_SHEETS,
  type SheetMetal,
  type SheetSize,
} from '../material/usual-sheets.ts';
import { blankOf, type Blank } from '../part/blank.ts';
import { blankBasisOf } from '../part/forming.ts';
import { aStage, stageName, type Stage } from '../part/stage.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import { USUAL_SHIFT } from '../time/usual-week.ts';
import { counted } from '../units/count.ts';

/** One press that mends a cause for all the lines that wait for it. */
export interface Remedy {
  /** What the button says. */
  readonly label: string;
  /** One step of the history. */
  readonly command: Command;
}

/** @param step how the history names it, where the button's words alone would not say what was done */
const remedy = (label: string, rows: readonly FormRow[], step = label): Remedy => ({
  label,
  command: { do: 'rows.save', rows, label: step },
});

/** A machine with usual figures for each stage, and a calendar where there is none. */
export function addMachines(shop: Shop, stages: readonly Stage[]): Remedy {
  const { machine, calendar, settings } = shop;
  const kept = calendar[0];
  const taken = machine.map(({ id }) => id);
  const machines = stages.map((stage): FormRow => ({
    kind: 'machine',
    row: usualMachine(stage, settings.units, kept?.id ?? 'day', taken),
  }));
  const hours: FormRow[] = kept
    ? []
    : [
        {
          kind: 'calendar',
          row: {
            id: 'day',
            name: 'Day shift',
            shifts: [USUAL_SHIFT],
            closures: [],
            overtime: [],
            revision: 0,
          },
        },
      ];
  const what = stages.map((stage) => aStage(stage, stageName[stage]).toLowerCase()).join(' and ');
  return remedy(`Add ${what} with usual figures`, [...hours, ...machines]);
}

/** Usual hours for the calendars of those machines, where each of them has no shift at all; else someone must look. */
export function openUsualHours(shop: Shop, machineIds: readonly string[]): Remedy | null {
  const kept = new Set(shop.machine.filter(({ id }) => machineIds.includes(id)).map((m) => m.calendarId));
  const calendars = shop.calendar.filter(({ id }) => kept.has(id));
  if (calendars.length === 0 || calendars.some(({ shifts }) => shifts.length > 0)) return null;
  const { start, end } = USUAL_SHIFT;
  return remedy(
    `Open ${calendars.map(({ name }) => name).join(' and ')} Monday to Friday, ${start} to ${end}`,
    calendars.map((row) => ({ kind: 'calendar', row: { ...row, shifts: [USUAL_SHIFT] } })),
  );
}

/** The metals of lines or of rows, each once. */
export const metalsIn = (of: readonly SheetMetal[]): SheetMetal[] => [
  ...new Map(
    of.map(({ materialId, gauge, colourId }) => [
      `${materialId} ${gauge} ${colourId}`,
      { materialId, gauge, colourId },
    ]),
  ).values(),
];

/**
 * A sheet size for each metal: the usual one, or the next larger usual one where the lines' blanks do not fit that.
 * Where the metal is kept in another size the price follows that one's by area; else it is not known yet.
 * @param lines open lines that must fit; those of other metals do not matter
 * @returns null where not one usual size is large enough for one of the metals
 */
export function addSheets(
  shop: Shop,
  metals: readonly SheetMetal[],
  lines: readonly OrderLine[],
): Remedy | null {
  const { units } = shop.settings;
  const taken = new Set(shop.sheet.map(({ id }) => id));
  const rows: FormRow[] = [];
  const sizes = new Set<string>();
  for (const metal of metals) {
    const size = sizeFor(
      shop,
      blanksOf(
        shop,
        lines.filter((line) => isOf(line, metal)),
      ),
    );
    if (size === null) return null;
    const row = newSheet(metal, size, units, taken, priceByArea(shop, metal, size));
    taken.add(row.id);
    sizes.add(sizeName(size, shop.settings));
    rows.push({ kind: 'sheet', row });
  }
  const all = metals.length > 1 ? ` for all ${metals.length}` : '';
  return remedy(`Add ${[...sizes].join(' and ')}${all}`, rows, `Add ${counted(rows.length, 'sheet size')}`);
}

const isOf = (a: SheetMetal, b: SheetMetal): boolean =>
  a.materialId === b.materialId && a.gauge === b.gauge && a.colourId === b.colourId;

/** Of lines whose part or metal is not there, none: another cause says so. */
function blanksOf(shop: Shop, lines: readonly OrderLine[]): Blank[] {
  return lines.flatMap((line) => {
    const part = shop.part.find(({ id }) => id === line.partId);
    const material = shop.material.find(({ id }) => id === line.materialId);
    const gauge = material?.gauges.find(({ label }) => label === line.gauge);
    if (!part || !material || !gauge) return [];
    const blank = blankOf(line, part, material, gauge, blankBasisOf(shop));
    return blank.ok ? [blank.value] : [];
  });
}

/** The usual size, else the smallest that every blank fits; null: none of the usual ones. */
function sizeFor(shop: Shop, blanks: readonly Blank[]): SheetSize | null {
  const { settings } = shop;
  const fits = (size: SheetSize): boolean =>
    blanks.every(
      (blank) => countCuts({ blank, quantity: 1, sheet: { ...size, trimMm: 0 }, units: settings }).ok,
    );
  return [usualSheet(settings.units), ...USUAL_SHEETS[settings.units]].find(fits) ?? null;
}

function priceByArea(shop: Shop, metal: SheetMetal, { widthMm, lengthMm }: SheetSize): number {
  const kept = shop.sheet.find(
    (sheet) => sheet.form === 'sheet' && sheet.costCents > 0 && isOf(sheet, metal),
  );
  if (!kept) return 0;
  return Math.round((kept.costCents * widthMm * lengthMm) / (kept.widthMm * kept.lengthMm));
}

/** " 3 lines wait for it.", or nothing where none waits yet. */
export const waitWords = (lines: number): string =>
  lines === 0 ? '' : ` ${counted(lines, 'line waits', 'lines wait')} for it.`;
