import { describe, expect, it } from 'vitest';
import { USUAL_COLOURS, newColour } from '../../../core/material/usual-colours.ts';
import { usualGauges, usualMaterial } from '../../../core/material/usual-metals.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { missingToPlan, type Missing } from '../../../core/report/missing.ts';
import type { Shop } from '../../../core/shop/state.ts';
import {
  aBrake,
  aCalendar,
  aColour,
  aLine,
  aMaterial,
  anOrder,
  aPart,
  aSheet,
  aShear,
  aShop,
  NOW,
  someSettings,
} from '../../support/builders.ts';
import { after, editOf } from '../../support/edits.ts';

const nothing: Partial<Shop> = {
  material: [],
  colour: [],
  sheet: [],
  part: [],
  machine: [],
  downtime: [],
  order: [],
  line: [],
  queue: [],
  pin: [],
  record: [],
};
const empty = aShop(nothing);
/** A shop that can plan its three lines. */
const ready = aShop({
  ...nothing,
  material: [aMaterial()],
  colour: [aColour(), aColour({ id: 'clay', name: 'Clay' })],
  sheet: [aSheet()],
  part: [aPart()],
  machine: [aShear(), aBrake()],
  order: [anOrder()],
  line: [1, 2, 3].map((number) => aLine({ number })),
});
const causes = (shop: Shop): string[] => missingToPlan(shop, NOW).map(({ cause }) => cause);
const only = (shop: Shop): Missing => {
  const [first, ...more] = missingToPlan(shop, NOW);
  if (!first || more.length > 0) throw new Error(causes(shop).join(', '));
  return first;
};
const mended = (shop: Shop): Shop => after(shop, only(shop).remedy!.command);

describe('what is missing to plan', () => {
  it('of a shop that can plan every line, is nothing', () => {
    expect(missingToPlan(ready, NOW)).toEqual([]);
  });

  it('of an empty shop, is everything, in the order in which it is put in', () => {
    expect(causes(empty)).toEqual(['shear', 'brake', 'material', 'colour', 'part', 'order']);
  });

  it('is no brake where nothing is bent', () => {
    const flat = aPart({ profile: { ...aPart().profile, flangesMm: [100], bends: [] } });
    expect(causes({ ...ready, machine: [aShear()], part: [flat] })).toEqual([]);
  });

  it('names a machine once for all lines that wait for it, and one press adds it with usual figures', () => {
    const without = { ...ready, machine: [aShear()] };
    expect(only(without)).toMatchObject({
      cause: 'brake',
      lines: ['1042/1', '1042/2', '1042/3'],
      message: 'The shop has no press brake. 3 lines wait for it.',
    });
    expect(causes(mended(without))).toEqual([]);
  });

  it('adds a calendar to the first machine of a shop that has none', () => {
    const without = { ...ready, machine: [aBrake()], calendar: [aCalendar()] };
    const bare = { ...empty, calendar: [] };
    expect(causes(mended(without))).toEqual([]);
    const [shear] = missingToPlan(bare, NOW);
    expect(after(bare, shear!.remedy!.command).calendar).toHaveLength(1);
  });
});

describe('metals without a sheet size', () => {
  const without = {
    ...ready,
    sheet: [],
    line: [aLine(), aLine({ number: 2, gauge: '26', colourId: 'clay' })],
  };

  it('are those that open lines ask for, and one press adds the usual size for all as one step', () => {
    expect(only(without)).toMatchObject({
      cause: 'sheet',
      message: '2 metals have no sheet size. 2 lines wait for it.',
      remedy: { label: 'Add 48 × 120 in for all 2' },
    });
    const edit = editOf(without, only(without).remedy!.command);
    expect(edit).toMatchObject({ label: 'Add 2 sheet sizes', changes: { length: 2 } });
    expect(causes(mended(without))).toEqual([]);
  });

  it('are all kept ones while no line says which are used', () => {
    const fresh = { ...without, order: [], line: [] };
    const [sheet] = missingToPlan(fresh, NOW);
    expect(sheet).toMatchObject({ message: '4 metals have no sheet size.', lines: [] });
    expect(causes(after(fresh, sheet!.remedy!.command))).toEqual(['order']);
  });

  it('get the metric size in a millimetre shop', () => {
    const metric = { ...without, settings: someSettings({ units: 'mm' }) };
    expect(only(metric).remedy?.label).toBe('Add 1250 × 3000 mm for all 2');
  });

  it('get a larger size where a blank does not fit the usual one', () => {
    const long = {
      ...without,
      line: [aLine({ lengthMm: 3048 + 200 })],
      machine: [aShear({ maxLengthMm: 4000 }), aBrake({ maxLengthMm: 4000 })],
    };
    expect(only(long).remedy?.label).toBe('Add 48 × 144 in');
  });

  it('are given no price, since nobody said one', () => {
    expect(mended(without).sheet.map(({ costCents }) => costCents)).toEqual([0, 0]);
  });
});

describe('blanks larger than the sheets kept', () => {
  const small = { ...ready, sheet: [aSheet({ lengthMm: 2438.4, costCents: 4960 })] };

  it('are one cause, and the larger size is priced by its area like the one kept', () => {
    expect(only(small)).toMatchObject({
      cause: 'size',
      message: '3 lines have blanks larger than the sheets kept.',
      remedy: { label: 'Add 48 × 120 in' },
    });
    expect(mended(small).sheet.find(({ lengthMm }) => lengthMm === 3048)?.costCents).toBe(6200);
    expect(causes(mended(small))).toEqual([]);
  });

  it('have no press where no usual size takes them', () => {
    const huge = { ...small, line: [aLine({ lengthMm: 6000 })] };
    expect(missingToPlan(huge, NOW)[0]).toMatchObject({ cause: 'size', remedy: null });
  });
});

describe('machines that never open', () => {
  it('hold up all lines; a calendar without a shift gets the usual ones by one press', () => {
    const shut = { ...ready, calendar: [aCalendar({ shifts: [], overtime: [] })] };
    expect(only(shut)).toMatchObject({ cause: 'hours', lines: ['1042/1', '1042/2', '1042/3'] });
    expect(causes(mended(shut))).toEqual([]);
  });

  it('hold up only the lines that need them, while others open', () => {
    const shut = {
      ...ready,
      calendar: [aCalendar(), aCalendar({ id: 'never', shifts: [], overtime: [] })],
      machine: [aShear(), aBrake({ calendarId: 'never' })],
    };
    expect(only(shut)).toMatchObject({
      cause: 'hours',
      message: 'B1 has no open hours ahead. 3 lines wait for it.',
      remedy: { label: 'Open Day shift Monday to Friday, 07:00 to 15:30' },
    });
    expect(causes(mended(shut))).toEqual([]);
    // Nothing that is flat waits for a brake.
    const flat = aPart({ profile: { ...aPart().profile, flangesMm: [100], bends: [] } });
    expect(causes({ ...shut, part: [flat] })).toEqual([]);
  });
});

describe('lines beyond the limits of the machines', () => {
  it('are one cause that no press mends: limits are the machine’s', () => {
    const short = { ...ready, machine: [aShear({ maxLengthMm: 1000 }), aBrake()] };
    expect(only(short)).toMatchObject({
      cause: 'limit',
      remedy: null,
      lines: ['1042/1', '1042/2', '1042/3'],
    });
  });
});

describe('the usual rows', () => {
  for (const units of ['in', 'mm'] as const)
    it(`make a shop in ${units} that plans a line by ticks alone`, () => {
      const begun = { ...empty, settings: someSettings({ units }) };
      const machines = after(
        begun,
        ...missingToPlan(begun, NOW).flatMap(({ remedy }) => remedy?.command ?? []),
      );
      const rows = [
        ...(['galvanized', 'steel', 'stainless', 'aluminium'] as const).map((metal) => ({
          kind: 'material' as const,
          row: usualMaterial(metal, usualGauges(metal, units)),
        })),
        ...USUAL_COLOURS.map(([name]) => ({ kind: 'colour' as const, row: newColour(name, []) })),
        { kind: 'part' as const, row: aPart() },
      ];
      const metals = after(machines, { do: 'rows.save', rows, label: 'Metals' });
      const sized = after(metals, missingToPlan(metals, NOW)[0]!.remedy!.command);
      const gauge = usualGauges('aluminium', units)[2]!.label;
      const line = aLine({ materialId: 'alum', gauge, colourId: 'dark-grey', lengthMm: 2400 });
      const asked = { ...sized, order: [anOrder()], line: [line] };
      expect(missingToPlan(asked, NOW)).toEqual([]);
      expect(operationsOf(asked).operations).toHaveLength(2);
    });
});
