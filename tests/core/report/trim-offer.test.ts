import { describe, expect, it } from 'vitest';
import { operationsOf } from '../../../core/planning/operations.ts';
import { trimOffers } from '../../../core/report/trim-offer.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, aShear, aSheet, aShop, anOrder } from '../../support/builders.ts';
import { after } from '../../support/edits.ts';

const QUARTER_MM = 6.35;
const told = aShear({ standards: { sheetLoad: 60, trimCuts: 1, trimWidth: QUARTER_MM } });
const shopWith = (trimMm: number, shear = told): Shop => {
  const base = aShop({ order: [anOrder()], line: [aLine()], sheet: [aSheet({ trimMm })] });
  return { ...base, machine: [shear, ...base.machine.filter(({ stage }) => stage === 'brake')] };
};

describe('a shear that was once told another trim than its sheets', () => {
  it('says nothing where both agree, where no trim was told, and of remnants', () => {
    expect(trimOffers(shopWith(QUARTER_MM))).toEqual([]);
    expect(trimOffers(shopWith(0, aShear()))).toEqual([]);
    const cutOff = aSheet({ id: 'rest', form: 'remnant' });
    expect(trimOffers({ ...shopWith(QUARTER_MM), sheet: [cutOff] })).toEqual([]);
  });

  it('names the sheets and both figures', () => {
    expect(trimOffers(shopWith(0)).map(({ message }) => message)).toEqual([
      'Shear was told that 1/4 in is trimmed off each sheet, and these sheets say otherwise: galv-24-moss (0 in). Times went by the shear, cut lists by the sheets; now both go by the sheets.',
    ]);
  });

  it('gives the sheets the shear’s figure in one step, or leaves theirs; either way it is settled', () => {
    const shop = shopWith(0);
    const [offer] = trimOffers(shop);
    if (!offer?.take) throw new Error('no offer');
    const taken = after(shop, offer.take.command);
    expect(taken.sheet.map(({ trimMm }) => trimMm)).toEqual([QUARTER_MM]);
    const left = after(shop, offer.leave.command);
    expect(left.sheet.map(({ trimMm }) => trimMm)).toEqual([0]);
    for (const settled of [taken, left]) {
      expect(settled.machine.find(({ id }) => id === 'S1')?.standards).toEqual({ sheetLoad: 60 });
      expect(trimOffers(settled)).toEqual([]);
    }
  });

  it('does not offer a trim that no sheet can have', () => {
    const deep = aShear({ standards: { trimCuts: 20, trimWidth: QUARTER_MM } });
    expect(trimOffers(shopWith(0, deep)).map(({ take }) => take)).toEqual([null]);
  });
});

it('times go by the sheet’s trim: what the shear was told counts no more', () => {
  const seconds = (shop: Shop): number | undefined => operationsOf(shop).operations[0]?.machines[0]?.seconds;
  const untold = aShear({ standards: { sheetLoad: 60 } });
  expect(seconds(shopWith(0))).toBe(seconds(shopWith(0, untold)));
  expect(seconds(shopWith(QUARTER_MM))).toBe(seconds(shopWith(QUARTER_MM, untold)));
  expect(seconds(shopWith(QUARTER_MM))).toBeGreaterThan(seconds(shopWith(0)) ?? NaN);
});
